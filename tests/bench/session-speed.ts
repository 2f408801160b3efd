import { defaultSettings } from "../../core/settings/settings.ts";
import { encodeMessage } from "../../electron/boundary/host-codec.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { bytesOf, jumpText } from "../electron/simulated-recordings.ts";

// How long the host works, in processor time, on a session of many recordings: taking them in, and one statement each.
const recordings = 500;
const kinds = [
  ...[2, 4, 6, 8].map((seed) => ["both", jumpText("both", seed)] as const),
  ...[10, 12, 14].map((seed) => ["left", jumpText("left", seed, 0.12)] as const),
  ...[16, 18, 20].map((seed) => ["right", jumpText("right", seed, 0.12)] as const),
];
const names = Array.from({ length: recordings }, (_, index) => `countermovement-${kinds[index % 10]![0]}-${index}.csv`);
// Empty lines at the end make each recording other bytes, so that none counts as a copy.
const contents = names.map((_, index) => bytesOf(`${kinds[index % 10]![1]}${"\n".repeat(index)}`));

const workspace = new WorkspaceState(defaultSettings, "");

function time(what: string, work: () => void): void {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  console.log(`${what.padEnd(58)}${((user + system) / 1000).toFixed(0).padStart(7)} ms`);
}

time(`${recordings} recordings taken in`, () => {
  for (const [index, name] of names.entries()) workspace.add(`session/${name}`, contents[index]!, "batch");
  workspace.endBatch("batch");
});
time("the session read for the first time", () => workspace.read());
time("read again, nothing changed", () => workspace.read());
time("and written for the screen", () => encodeMessage(workspace.read()));
time("one trial marked as seen", () => {
  workspace.changeTrial("session", names[4]!, 1, { seen: true });
  workspace.read();
});
time("one trial excluded, and with it another pooled weight", () => {
  workspace.changeTrial("session", names[5]!, 1, { excluded: { reason: "hand on the rail" } });
  workspace.read();
});
time("the limb of one recording stated", () => {
  workspace.answer("session", [names[6]!], { limb: "left" });
  workspace.read();
});
time("the milestone of the session stated", () => {
  workspace.changeSession("session", { milestone: "month 6" });
  workspace.read();
});
