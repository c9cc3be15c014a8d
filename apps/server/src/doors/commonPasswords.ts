/** Passwords of ten signs and more that are tried first, and short ones that people lengthen by digits or repeat; in
 *  small letters, without signs. Written from memory of published frequency lists, for it is no more than a sieve. */
export const commonPasswords: ReadonlySet<string> = new Set(
  `1234567890 0123456789 12345678910 123456789012 1234567891 0987654321 9876543210 1q2w3e4r5t 1q2w3e4r5t6y qwertyuiop
  qwertyuiopasdf qwertzuiop qwertzuiopasdf azertyuiop qwerty12345 qwerty123456 1qaz2wsx3edc 1qazxsw2 zaq12wsx asdfghjkl
  asdfghjklm zxcvbnm zxcvbnmasdf qazwsxedc qazwsxedcrfv password passwords passwort kennwort password1 password12
  password123 password1234 passw0rd p4ssword p4ssw0rd mypassword yourpassword thepassword newpassword password2
  changeme changemenow changeit letmein letmeinnow letmeinplease opensesame iloveyou iloveyou1 iloveyousomuch ichliebedich
  trustno1 welcome welcome1 welcome123 welcomehome willkommen administrator admin administrator1 adminadmin admin123
  rootroot default defaultpassword secret secretsecret topsecret sunshine princess superman batman dragon monkey football
  basketball baseball liverpool manchester chelsea arsenal starwars pokemon michael jennifer jessica ashley charlie
  hallohallo hallo123 testtest testtesttest test test123 testing testing123 temppassword temporary summer winter spring
  autumn sommer2024 correcthorsebatterystaple thequickbrownfox abcdefghij abcdefghijk abcdefghijklmnop abc123 abcd1234
  aabbccddee a1b2c3d4e5 whatever whatever1 nothing nopassword user username guestguest computer internet samsung
  aquarium aquariums saltwater seawater seawaterrooms marineaquarium tidewright coralreef reeftank meerwasser clownfish`
    .split(/\s+/)
    .filter((each) => each !== ""),
);
