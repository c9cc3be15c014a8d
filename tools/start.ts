import { spawn, spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { join } from "node:path";
import { filesUnder, repositoryRoot } from "./repository.ts";

// The first of the two commands: builds what is not up to date, answers the main job in the terminal, then serves the
// shop until stopped.

const demo = "examples/waiting-room-reef.json";
const cli = join(repositoryRoot, "apps", "cli", "dist", "main.js");
const shop = join(repositoryRoot, "apps", "server", "dist", "main.js");

function say(text: string): void {
  console.log(`\n${text}\n`);
}

function build(script: readonly string[]): void {
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const { status } = spawnSync(npm, script, { cwd: repositoryRoot, stdio: ["ignore", "inherit", "inherit"] });
  if (status !== 0) {
    console.error(`The build stopped at: npm ${script.join(" ")}`);
    process.exit(3);
  }
}

/** Whether the built page is newer than everything it is made from. */
function webIsCurrent(): boolean {
  const built = statSync(join(repositoryRoot, "apps", "web", "dist", "index.html"), { throwIfNoEntry: false });
  if (!built) return false;
  const inputs = ["packages", join("apps", "web"), "examples"].flatMap((folder) =>
    filesUnder(join(repositoryRoot, folder))
      .filter((path) => !path.endsWith(".tsbuildinfo"))
      .map((path) => join(repositoryRoot, folder, path)),
  );
  const lockfile = join(repositoryRoot, "package-lock.json");
  return [...inputs, lockfile].every((path) => statSync(path).mtimeMs <= built.mtimeMs);
}

function answer(...args: string[]): void {
  say(`$ tidewright ${args.join(" ")}`);
  const { status } = spawnSync(process.execPath, [cli, ...args], {
    cwd: repositoryRoot,
    stdio: ["ignore", "inherit", "inherit"],
  });
  // 1 says that the design has a finding of severity danger: an answer, not a failure.
  if (status !== 0 && status !== 1) process.exit(status ?? 3);
}

say("Building Tidewright");
build(["run", "--silent", "build:code"]);
if (webIsCurrent()) console.log("The bench is up to date.");
else build(["run", "--silent", "build", "-w", "apps/web"]);
for (const built of [cli, shop]) if (!existsSync(built)) throw new Error(`the build left no ${built}`);

answer("assess", demo);
answer("rank", demo, "--top", "5");

say("Serving the shop; stop it with Ctrl+C");
const server = spawn(process.execPath, [shop, ...process.argv.slice(2)], {
  cwd: repositoryRoot,
  stdio: "inherit",
});
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
  process.on(signal, () => {
    // A terminal sends Ctrl+C to the server too; twice would read as impatience.
    if (signal !== "SIGINT" || !process.stdin.isTTY) server.kill(signal);
  });
}
server.on("exit", (code, signal) => {
  // Stopped on purpose is a good end.
  process.exitCode = signal === null ? (code ?? 0) : 0;
});
