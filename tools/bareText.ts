import ts from "typescript";

/** A text of a screen that does not come from the message catalogue. */
export interface BareText {
  readonly line: number;
  readonly text: string;
}

/** Attributes and properties whose value a person reads or hears. */
const spoken =
  /^(aria-(label|description|roledescription|valuetext)|title|placeholder|alt|label|hint|note|group|caption|summary)$/;

/** Texts that are the same in every language: a letter or two are symbols and units, and each language names itself. */
const everywhere = /^(kWh|English|Deutsch|Tidewright|PDF|CSV|JSON|SVG|PNG)$/;

/** Returns the texts of a source file that a reader of another language would meet untranslated: text between tags, and literals in
 *  attributes and properties that are shown or read out.
 *  name of the file, .ts or .tsx   source its text   -> bare texts in the order of the file
 *  Valid: a literal that reaches the screen through a variable is not seen; what stands inside a call is the call's business.
 *  Source: own construction on the TypeScript syntax tree. */
export function bareTexts(name: string, source: string): BareText[] {
  const file = ts.createSourceFile(name, source, ts.ScriptTarget.Latest, true);
  const found: BareText[] = [];
  const tell = (node: ts.Node, raw: string) => {
    const text = raw.replace(/\s+/g, " ").trim();
    if (!/\p{L}{3}/u.test(text) || everywhere.test(text)) return;
    found.push({ line: file.getLineAndCharacterOfPosition(node.getStart()).line + 1, text });
  };
  /** What an expression can come to be, without going into calls. */
  const values = (node: ts.Node): void => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) tell(node, node.text);
    else if (ts.isTemplateExpression(node)) {
      tell(node, [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join("…"));
      for (const { expression } of node.templateSpans) values(expression);
    } else if (ts.isConditionalExpression(node)) {
      values(node.whenTrue);
      values(node.whenFalse);
    } else if (ts.isBinaryExpression(node) && joins.has(node.operatorToken.kind)) {
      values(node.left);
      values(node.right);
    } else if (ts.isParenthesizedExpression(node)) values(node.expression);
  };
  const visit = (node: ts.Node): void => {
    // What is typed into a machine is the same for everybody.
    if (ts.isJsxElement(node) && node.openingElement.tagName.getText() === "code") return;
    if (ts.isJsxText(node)) tell(node, node.text);
    if (ts.isJsxAttribute(node) && spoken.test(node.name.getText()) && node.initializer !== undefined)
      values(ts.isJsxExpression(node.initializer) ? (node.initializer.expression ?? node) : node.initializer);
    if (ts.isJsxExpression(node) && (ts.isJsxElement(node.parent) || ts.isJsxFragment(node.parent)) && node.expression)
      values(node.expression);
    if (ts.isPropertyAssignment(node) && spoken.test(node.name.getText().replace(/"/g, ""))) {
      // A key of the catalogue is no text.
      const { initializer } = node;
      if (!(ts.isStringLiteral(initializer) && /^[a-z]\w*\.[\w./-]+$/.test(initializer.text))) values(initializer);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const joins = new Set<ts.SyntaxKind>([
  ts.SyntaxKind.QuestionQuestionToken,
  ts.SyntaxKind.BarBarToken,
  ts.SyntaxKind.AmpersandAmpersandToken,
  ts.SyntaxKind.PlusToken,
]);
