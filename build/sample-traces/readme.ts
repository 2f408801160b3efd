import type { DemoSession } from "./demo-world.ts";
import type { DoubtfulFile } from "./doubtful.ts";
import type { RecordedDrop } from "./record-drop-jumps.ts";
import type { RecordedTrial } from "./record-session.ts";
import type { RecordedSession } from "./sample-files.ts";
import type { Dialect } from "./write-delimited.ts";

/** The README of `sample-traces/`, made from what was recorded so that it cannot disagree with the files. */
export function describeSamples(recorded: readonly RecordedSession[], doubtful: readonly DoubtfulFile[]): string {
  const sections = recorded.map(describeSession);
  return `# Sample traces

**Everything here is simulated.** The people, their injuries and their club, *Grynnholm HK*, are invented; no recording
of a real person is in this folder. The recordings were made by the project's own jump simulator (\`core/simulate\`) and
are written again, byte for byte, by \`node build/make-sample-traces.ts\` (Node 24).

Each folder is one session of countermovement jumps, and from the stage on where landings are practised of drop jumps
from 0.30 m on two legs and 0.20 m on each, with its \`session.json\`. Heights and indices are the means the session was
made for; trials scatter about them (two-leg height 3 %, single-leg height 5 %, contact time 4 %, single-leg reactive
strength index 8 %, limb share one point, time and depth 2.5 %), centred so that the true mean of the session is the
stated one to its last digit. An index is involved over uninvolved in per cent, left over right where nobody is injured:
braking and propulsion from gross impulse, landing from peak force. The height of a drop jump is that of its flight
time, g·t²/8, and its reactive strength index that height over contact time.

\`expected.json\` holds the true values of every trial (mass, height, take-off velocity, contact time, effective drop
height, event times from the first sample, impulses and peaks of each foot) and the finding that each doubtful file must bring.

## Sessions

${sections.join("\n")}
## What was chosen freely

The table of the demo world gives no depth and no time to take-off for single-leg jumps, and none at all for Jonas Ekre
and Aila Rusten; nor a propulsion and landing index for Aila. The values above were chosen as plausible: involved
single-leg jumps take longer (1.00 to 1.12 s) and unweight less (least force 0.65 to 0.70 of body weight) than
uninvolved ones (0.86 to 0.90 s, 0.61 to 0.64), and peak at 1.5 to 1.9
body weights; single-leg depths follow from that. Of drop jumps the table gives neither heights and contact times of
Aila Rusten nor limb indices: the heights and contact times above were chosen to give her reactive strength indices, and
the limbs share the contact as in the countermovement jump. The legs take turns in leading off the box; the leading one
lands 2 to 5 ms earlier and carries 2.5 points more of the braking impulse. The body falls 0.27 m from the box of 0.30 m
and 0.17 m from that of 0.20 m (at month 7 on the right leg 0.155 m: she lowers herself). Noise of 1.2 N on each plate, sway of 0.5 to 1.0 mm, limbs leaving up to 4 ms and landing up to 2 ms apart.

## Doubtful recordings

\`doubtful/\` holds files with one fault each; each brings exactly the one finding named here, as a warning (the trial is
still analysed) or as a refusal.

| file | finding | severity | what is wrong |
|---|---|---|---|
${doubtful.map((each) => `| \`${each.file}\` | \`${each.code}\` | ${each.severity} | ${each.shows} |`).join("\n")}
`;
}

function describeSession({ session, trials, drops }: RecordedSession): string {
  const { twoLegs, oneLeg, description } = session;
  const single = (limb: "left" | "right"): string =>
    oneLeg === undefined
      ? ""
      : `| ${limb} leg | ${oneLeg[limb].heightCm.toFixed(1)} | ${oneLeg[limb].seconds.toFixed(2)} | ${meanDepthCm(trials, limb)} | ${filesOf(trials, limb)} |\n`;
  const plates =
    oneLeg === undefined
      ? "No single-leg trials."
      : `Single-leg trials on ${session.singlePlates === "two" ? "both plates" : "one plate"}.`;
  const feet = session.platesStated
    ? "The plate of each foot is stated."
    : "The plate of each foot is not stated, and the columns' names are wrong.";
  return `### \`${session.folder}\`

${description.athlete?.name}, ${description.date}, ${description.milestone}, ${session.massKg.toFixed(1)} kg. Shows ${session.shows}.
${plates} ${feet} Files: ${describeDialect(session.dialect)}.

| jump | height (cm) | time to take-off (s) | depth (cm) | files |
|---|---|---|---|---|
| both legs | ${twoLegs.heightCm.toFixed(1)} | ${twoLegs.seconds.toFixed(2)} | ${twoLegs.depthCm.toFixed(1)} | ${filesOf(trials, "both")} |
${single("left")}${single("right")}
Indices of the two-leg jumps: braking ${percent(twoLegs.braking)}, propulsion ${percent(twoLegs.propulsion)}, landing peak ${percent(twoLegs.landingPeak)}.
${describeDrops(session, drops)}`;
}

/** At most one decimal: the demo world's table gives whole per cent. */
function percent(value: number): string {
  return `${Number(value.toFixed(1))} %`;
}

function describeDrops({ drops: targets }: DemoSession, drops: readonly RecordedDrop[]): string {
  if (targets === undefined) return "No drop jumps.\n";
  const row = (limb: RecordedDrop["limb"], name: string): string => {
    const { heightCm, contactSeconds } = targets[limb];
    const those = drops.filter((each) => each.limb === limb);
    const effective = those.reduce((sum, each) => sum + each.jump.truth.dropHeightEffectiveMetres, 0) / those.length;
    const box = those[0]?.boxHeightMetres ?? Number.NaN;
    const index = heightCm / 100 / contactSeconds;
    return `| ${name} | ${box.toFixed(2)} | ${effective.toFixed(3)} | ${heightCm.toFixed(1)} | ${contactSeconds.toFixed(3)} | ${index.toFixed(2)} | \`drop-jump-${limb}-1.csv\` to \`-${those.length}.csv\` |`;
  };
  return `
| drop jump | box (m) | effective drop (m) | height (cm) | contact (s) | reactive strength index (m/s) | files |
|---|---|---|---|---|---|---|
${row("both", "both legs, leading left and right in turn")}
${row("left", "left leg")}
${row("right", "right leg")}
`;
}

function meanDepthCm(trials: readonly RecordedTrial[], limb: RecordedTrial["limb"]): string {
  const depths = trials.filter((each) => each.limb === limb).map((each) => each.jump.truth.depthMetres);
  return ((100 * depths.reduce((sum, each) => sum + each, 0)) / depths.length).toFixed(1);
}

function filesOf(trials: readonly RecordedTrial[], limb: RecordedTrial["limb"]): string {
  const count = trials.filter((each) => each.limb === limb).length;
  return `\`countermovement-${limb}-1.csv\` to \`-${count}.csv\``;
}

function describeDialect(dialect: Dialect): string {
  const delimiter = { ",": "comma", ";": "semicolon", "\t": "tab", " ": "space" }[dialect.delimiter];
  return [
    `${delimiter} between columns`,
    `decimal ${dialect.decimalMark === "." ? "point" : "comma"}`,
    dialect.time === undefined
      ? "no time column (the rate is stated in session.json)"
      : `time in ${dialect.time === "s" ? "seconds" : "milliseconds"}`,
    dialect.header === undefined ? "no header (columns and unit are stated in session.json)" : "header with units",
    dialect.unit === "N" ? "force in newtons" : "force in kilonewtons",
    ...(dialect.preamble === undefined ? [] : [`${dialect.preamble.length} lines of text before the header`]),
    ...(dialect.lineEnd === "\r\n" ? ["carriage returns at line ends"] : []),
  ].join(", ");
}
