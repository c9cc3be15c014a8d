/** Who may import whom: one name and one sentence of reason each. Inner packages know nothing of outer ones. */
const test = "([.](test|browser[.]test)[.]tsx?$|/src/testing/)";
/** The entry point of a package, as the "source" condition finds it. */
const entry = (names) => `^packages/(${names})/src/index[.]ts$`;

/** A package may import its own files, the entries of the packages named, and the npm packages its manifest lists. */
const onlyPackages = (name, allowed, comment) => ({
  name: `${name}-imports`,
  comment,
  severity: "error",
  from: { path: `^packages/${name}/src`, pathNot: test },
  to: { path: "^(packages|apps|checks|bench|tools)/", pathNot: [`^packages/${name}/`, entry(allowed)] },
});

module.exports = {
  forbidden: [
    {
      name: "no-cycles",
      comment: "Files that import each other in a ring can only be understood all at once.",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "engine-and-units-import-nothing",
      comment: "Physics and unit factors depend on nothing, so that they run anywhere and can be read alone.",
      severity: "error",
      from: { path: "^packages/(engine|units)/src", pathNot: test },
      to: { pathNot: "^packages/$1/src/" },
    },
    onlyPackages("catalogue", "units|engine", "Data rows know quantities and the engine's shapes, and no design."),
    onlyPackages(
      "design",
      "units|engine|catalogue",
      "The document refers to catalogue rows and becomes an engine model.",
    ),
    onlyPackages(
      "advice",
      "units|engine|catalogue|design|words",
      "Advice reads a design and answers; no app is known to it.",
    ),
    onlyPackages(
      "report",
      "units|engine|catalogue|design|advice",
      "Pictures and papers are drawn from results and their wording; where they go is not their business.",
    ),
    {
      name: "report-knows-no-view-framework",
      comment: "A picture is text that a file, a server and a page can hold alike, so nothing of a page may make it.",
      severity: "error",
      from: { path: "^packages/report/src", pathNot: test },
      to: { path: "node_modules/(react|react-dom|preact|vue|svelte|solid-js|jsdom)/" },
    },
    onlyPackages(
      "editor",
      "units|engine|catalogue|design|advice|words",
      "What a hand does on the drawing becomes edits of the document; no screen is known to it.",
    ),
    {
      name: "editor-knows-no-view-framework",
      comment: "A gesture must be playable without a page, so nothing of a page may take part in it.",
      severity: "error",
      from: { path: "^packages/editor/src", pathNot: test },
      to: { path: "node_modules/(react|react-dom|preact|vue|svelte|solid-js|jsdom)/" },
    },
    onlyPackages("words", "nothing", "Texts know nobody; everybody may speak."),
    onlyPackages("protocol", "design", "Server and screens share a table of routes, and neither knows the other."),
    onlyPackages("store", "design", "The store keeps documents and never reads what they mean."),
    {
      name: "web-keeps-nothing",
      comment: "A browser has no database of the shop; it asks the server.",
      severity: "error",
      from: { path: "^(apps/web|packages/(?!store/)[^/]+)/" },
      to: { path: "^packages/store/" },
    },
    {
      name: "packages-run-anywhere",
      comment:
        "The same packages run in the browser and in Node, so none reaches for Node's own modules; the store alone owns files.",
      severity: "error",
      from: { path: "^packages/(?!store/)[^/]+/src", pathNot: test },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "entry-points-only",
      comment: "What a package does not hand out at its entry may change without notice.",
      severity: "error",
      from: { path: "^(packages|apps)/([^/]+)/|^(checks|bench)/" },
      to: { path: "^packages/([^/]+)/", pathNot: ["^packages/$2/", "^packages/[^/]+/src/index[.]ts$"] },
    },
    {
      name: "nothing-imports-an-app",
      comment: "Apps are the outermost ring; what two of them need belongs in a package.",
      severity: "error",
      from: { path: "^(packages|checks|bench|tools)/" },
      to: { path: "^apps/" },
    },
    {
      name: "no-app-imports-another",
      comment:
        "Each app can be built, shipped and thrown away alone; the CLI serves the web app as built files, by path.",
      severity: "error",
      from: { path: "^apps/([^/]+)/" },
      to: { path: "^apps/", pathNot: "^apps/$1/" },
    },
    {
      name: "web-runs-in-a-browser",
      comment: "A browser has none of Node's own modules.",
      severity: "error",
      from: { path: "^apps/web/src", pathNot: test },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "product-knows-no-test",
      comment: "Tests, checks, benchmarks and tools are never part of what is shipped.",
      severity: "error",
      from: { path: "^(packages|apps)/[^/]+/src", pathNot: test },
      to: { path: [test, "^(checks|bench|tools)/", "node_modules/(vitest|fast-check|playwright-core)/"] },
    },
    {
      name: "no-orphans",
      comment: "A file that nothing imports and that imports nothing is forgotten or unfinished.",
      severity: "error",
      from: { orphan: true, pathNot: [test, "[.]d[.]ts$", "[.]config[.]ts$", "/src/(index|main)[.]tsx?$"] },
      to: {},
    },
    {
      name: "every-import-resolves",
      comment: "An import that leads nowhere fails only when it is reached.",
      severity: "error",
      from: {},
      to: { couldNotResolve: true, pathNot: "[?](worker|url|raw)$" },
    },
    {
      name: "npm-packages-are-declared",
      comment: "A package that works only because another one brought it along disappears without warning.",
      severity: "error",
      from: {},
      to: { dependencyTypes: ["npm-no-pkg", "npm-unknown"] },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)(dist|node_modules/[.]vite)/" },
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    tsConfig: { fileName: "tsconfig.tests.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["source", "import", "node", "default", "types"],
      extensions: [".ts", ".tsx", ".js", ".mjs", ".cjs", ".json", ".css", ".d.ts"],
    },
  },
};
