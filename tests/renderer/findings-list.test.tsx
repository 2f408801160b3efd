import { expect, it } from "vitest";
import { proseFinding } from "../../core/ground/finding.ts";
import { FindingsList } from "../../renderer/shell/findings-list.tsx";
import { markupOf } from "./render.tsx";

it("says what to do without the options of the command line, for which the window has forms", () => {
  const missing = proseFinding("rate-missing", "refusal", "There is no time column.", "State the rate (--rate 1000).");
  const markup = markupOf(<FindingsList findings={[missing]} />);
  expect(markup).toContain("There is no time column. State the rate.");
  expect(markup).not.toContain("--");
});
