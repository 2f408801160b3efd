// Every screen in every state, in both colour schemes and at every size, looked at by axe; the suite looks at one size in
// each scheme. Run after a build: node tests/bench/screen-sizes.ts (Node 24). Prints the table of screen-sizes.md and
// writes it there; ends with code 1 where something was found.
import { writeFileSync } from "node:fs";
import { launchApplication } from "../e2e/launched-application.ts";
import { screenSizes, type Walk, walkScreens } from "../e2e/walk-screens.ts";

const application = await launchApplication();
const rows: string[] = [];
const faults: string[] = [];
try {
  for (const colourScheme of ["light", "dark"] as const) {
    const walk = await walkScreens(application, { colourScheme, axeAt: screenSizes });
    faults.push(...walk.faults.map((fault) => `${colourScheme}, ${fault}`), ...walk.problems);
    rows.push(...rowsOf(colourScheme, walk));
  }
} finally {
  await application.close();
}

const table = [
  "# The screens at every size",
  "",
  "Written by `node tests/bench/screen-sizes.ts`: what axe found and what stood out sideways, in each state.",
  "",
  `| colours | state | ${screenSizes.map(({ width, height }) => `${width} × ${height}`).join(" | ")} |`,
  `|---|---|${screenSizes.map(() => "---|").join("")}`,
  ...rows,
  "",
].join("\n");
writeFileSync(new URL("./screen-sizes.md", import.meta.url), table);
console.log(table);
for (const fault of faults) console.log(fault);
if (faults.length > 0) process.exitCode = 1;

function rowsOf(colourScheme: string, { states, faults: found }: Walk): readonly string[] {
  return states.map((state) => {
    const counts = screenSizes.map(
      ({ width, height }) => found.filter((fault) => fault.startsWith(`${state}, ${width} × ${height}:`)).length,
    );
    return `| ${colourScheme} | ${state} | ${counts.map((count) => (count === 0 ? "nothing" : count)).join(" | ")} |`;
  });
}
