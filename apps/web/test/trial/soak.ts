/** Twenty editors over five jobs for two minutes, with lines that break.
 *
 *  npm run soak -w @tidewright/web -- [SECONDS] [built] */
import { editTogether } from "./editTogether.ts";

const [seconds = "120", built] = process.argv.slice(2);
const figures = await editTogether({
  jobs: 5,
  editorsPerJob: 4,
  seconds: Number(seconds),
  pace: 1500,
  built: built === "built",
});
console.log(JSON.stringify(figures, undefined, 2));
process.exit(figures.stuck.length + figures.wrong.length > 0 ? 1 : 0);
