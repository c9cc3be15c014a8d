import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { chromiumPath } from "./browser.ts";
import { pythonWithFluids } from "./pythonWithFluids.ts";
import { repositoryRoot } from "./repository.ts";
import { postgresPrograms } from "./scratchPostgres.ts";

// Brings what the tests need beyond npm packages: Chromium, and on Debian the fluids library for Python that an
// outside check compares with and a PostgreSQL for the store's second database. Does nothing where both are there, so it may run before every test.

function run(command: string, args: readonly string[]): boolean {
  console.log(`> ${command} ${args.join(" ")}`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const { status } = spawnSync(command, args, { cwd: repositoryRoot, stdio: ["ignore", "inherit", "inherit"], env });
  return status === 0;
}

function isDebian(): boolean {
  // Ubuntu is left out on purpose: its chromium package is only a pointer to another package system.
  return existsSync("/etc/os-release") && /^ID="?debian"?$/m.test(readFileSync("/etc/os-release", "utf8"));
}

/** The words to put before a command that changes the system; undefined when this user may not. */
function elevation(): readonly string[] | undefined {
  if (process.getuid?.() === 0) return [];
  return spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status === 0 ? ["sudo", "-n"] : undefined;
}

const elevated = isDebian() ? elevation() : undefined;
let listsAreFresh = false;

function aptInstall(...names: string[]): boolean {
  if (!elevated) return false;
  const apt = (...args: string[]): boolean => {
    const [command = "apt-get", ...rest] = [...elevated, "apt-get", "-q", ...args];
    return run(command, rest);
  };
  if (!listsAreFresh) listsAreFresh = apt("update");
  return apt("install", "-y", "--no-install-recommends", ...names);
}

if (!chromiumPath() && !(aptInstall("chromium", "chromium-sandbox", "fonts-liberation") && chromiumPath())) {
  run(process.platform === "win32" ? "npx.cmd" : "npx", ["playwright-core", "install", "chromium"]);
}
const chromium = chromiumPath();
if (!chromium) {
  console.error("Chromium, which the browser tests need, could not be installed.");
  console.error("Install it by hand and name it in CHROMIUM_PATH, then run this again.");
  process.exitCode = 1;
} else console.log(`Chromium for the browser tests: ${chromium}`);

if (!postgresPrograms()) aptInstall("postgresql");
console.log(
  postgresPrograms()
    ? `PostgreSQL for the store's second database: ${postgresPrograms()}`
    : "PostgreSQL is not here and cannot be installed by this user: the store is tried on its embedded database alone.",
);

if (!pythonWithFluids()) aptInstall("python3-fluids");
const python = pythonWithFluids();
console.log(
  python
    ? `Python with the fluids library: ${python}`
    : "The Python library fluids is not here and cannot be installed by this user: checks against it will be skipped.",
);
