import { kneeRows } from "../../../core/criteria/knee-rows.ts";
import { gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { exampleSession } from "../../core/sheet/example-session.ts";
import { sheetTexts } from "../../core/sheet/sheet-text.ts";

/** A session of these statements has single-leg and drop trials, so that the second asking was due. */
export const harderTrials = [
  { test: "countermovementJump", limb: "both" },
  { test: "countermovementJump", limb: "left" },
] as const;

/** Every text of the sheet that a session with these statements gets, with plain spaces. */
export function sheetWords(description: SessionDescription): string {
  const gate = gateOf(description, defaultSettings, [], harderTrials);
  const knee = kneeRows(gate, description.involved);
  const sheet = buildSheet(exampleSession({ description, gate, knee }), defaultSettings);
  return [sheet.subtitle, ...sheetTexts(sheet)].join("\n").replaceAll("\u00a0", " ");
}
