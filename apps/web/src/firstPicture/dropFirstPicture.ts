/** Takes the first picture off the page once the screen itself stands there, or has something else to say. */
export function dropFirstPicture(): void {
  document.getElementById("first-picture")?.remove();
}
