/** Returns a file's name as it is kept for display: its last part, without characters that steer a screen or a path.
 *  given name as the sender wrote it   -> 1 to 200 characters; "file" where nothing is left
 *  Findings: none. Throws: never.
 *  Valid: any text. What it looks like, markup included, stays: a screen shows it as text.
 *  Source: OWASP Cheat Sheet Series, File Upload, "Filename Sanitization"; Unicode Standard Annex 9 for the signs that
 *  turn the direction of text, by which "gpj.exe" can be made to read "exe.jpg".
 *  Example: displayName("../../etc/passwd")  ->  "passwd"
 *  Example: displayName("C:\\photos\\sump.jpg")  ->  "sump.jpg"
 *  Example: displayName("  ..  ")  ->  "file" */
export function displayName(given: string): string {
  const last = wellFormed(given).split(/[/\\]/).at(-1) ?? "";
  const plain = last
    .replace(/[\p{Cc}\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu, "")
    .replace(/^[\s.]+|[\s.]+$/g, "");
  return wellFormed([...plain].slice(0, 150).join("").slice(0, 200)) || "file";
}

const extensions: Readonly<Record<string, readonly string[]>> = {
  "image/jpeg": ["jpg", "jpeg"],
  "image/png": ["png"],
  "image/webp": ["webp"],
  "image/avif": ["avif"],
  "image/heic": ["heic"],
  "image/heif": ["heif", "heic"],
  "application/pdf": ["pdf"],
  "text/csv": ["csv"],
  "application/json": ["json"],
  "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet": ["xlsx"],
};

/** Returns the name under which a file is handed out: its own, with an ending that fits what it is, so that a table
 *  called "chart.html" is not opened as a page.
 *  name as kept; contentType as found from the content   -> name
 *  Example: downloadName("chart.html", "text/csv")  ->  "chart.html.csv"
 *  Example: downloadName("Sump.JPG", "image/jpeg")  ->  "Sump.JPG" */
export function downloadName(name: string, contentType: string): string {
  const fitting = extensions[contentType] ?? ["bin"];
  const ending = /\.([^.]+)$/.exec(name)?.[1]?.toLowerCase();
  return ending !== undefined && fitting.includes(ending) ? name : `${name}.${fitting[0]}`;
}

/** Returns the Content-Disposition of a file, with a name in ASCII for old readers and the whole one in UTF-8.
 *  disposition inline or attachment; name   -> header value
 *  Valid: any name; quotes and backslashes become "_" in the ASCII form.
 *  Source: RFC 6266, 4.1 and appendix D; RFC 8187, 3.2.1 for attr-char.
 *  Example: contentDisposition("attachment", "Maß.pdf")  ->  "attachment; filename=\"Ma_.pdf\"; filename*=UTF-8''Ma%C3%9F.pdf" */
export function contentDisposition(disposition: "inline" | "attachment", name: string): string {
  const ascii = name.replace(/[^\x20-\x7e]|["\\%]/gu, "_");
  // encodeURIComponent leaves ' ( ) * alone, which are no attr-char.
  const encoded = encodeURIComponent(wellFormed(name)).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `${disposition}; filename="${ascii}"; filename*=UTF-8''${encoded}`;
}

/** Text without halves of pairs, which nothing can write as UTF-8. */
const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, "\ufffd");
