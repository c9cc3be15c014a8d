type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Returns one SVG element as text; attributes that are undefined are left out, numbers are kept to a hundredth.
 *  name of the element   attributes   children ready-made elements; text goes through `escaped`   -> XML
 *  Source: W3C XML 1.0, 2.4 and 3.1.
 *  Example: element("circle", { r: 2.00001, fill: undefined })  ->  "<circle r=\"2\"/>" */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let tag = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    tag += ` ${key}="${escaped(typeof value === "number" ? rounded(value) : value)}"`;
  }
  return children.length === 0 ? `${tag}/>` : `${tag}>${children.join("")}</${name}>`;
}

/** Returns text that may stand in XML, in content and in attributes; characters that XML forbids become spaces.
 *  text any   -> text
 *  Source: W3C XML 1.0, 2.2 and 2.4.
 *  Example: escaped("a < b & \"c\"")  ->  "a &lt; b &amp; &quot;c&quot;" */
export function escaped(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replace(forbidden, " ");
}

/** Control characters, unpaired surrogates and the two that are no characters: XML has no way to write them. */
const forbidden =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

function rounded(value: number): string {
  return String(Number(value.toFixed(2)));
}
