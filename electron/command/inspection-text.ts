import { countOf } from "../../core/ground/plain-words.ts";
import type { C3dInspection, InspectedPlatform } from "../../core/recording/c3d/inspect-c3d.ts";
import type { SeriesFigures } from "../../core/recording/c3d/series-figures.ts";
import { decimalMarkWords, rowCountWords } from "../../core/recording/decimal-mark-words.ts";
import type { TableInspection } from "../../core/recording/file-inspection.ts";
import { columnsOfText } from "./columns-of-text.ts";
import { findingLine } from "./finding-line.ts";
import type { InspectedFile } from "./inspected-file.ts";

/** One inspected file for reading in a terminal. Numbers stand in full precision. */
export function inspectionText(inspected: InspectedFile): string {
  const { file, bytes, sha256, findings } = inspected;
  const lines = [`${file}: ${bytes} bytes, SHA-256 ${sha256}`];
  if (inspected.kind === "delimited") lines.push(...tableLines(inspected));
  else if (inspected.kind === "c3d") lines.push(...c3dLines(inspected));
  else lines.push("  Nothing of it is understood.");
  return `${[...lines, ...findings.map(findingLine)].join("\n")}\n`;
}

function tableLines(table: TableInspection): readonly string[] {
  const { encoding, delimiter, thousandsMark, lineCount, headerLines, rows, firstRowLine, lastRowLine } = table;
  const decimals = decimalMarkWords(table.decimalMark, table.channels);
  const marks = thousandsMark === "none" ? "" : `, thousands ${thousandsMark}`;
  const lines = [
    `  Delimited text: ${encoding}, ${delimiter}, ${decimals}${marks}, ${countOf(headerLines, "line")} before ${rows} rows (lines ${firstRowLine} to ${lastRowLine})`,
    `  Of ${countOf(lineCount, "line")}: ${rowCountWords(table.rowsKept, table.rowsDropped)}`,
    `  Rate: ${table.rateHz === undefined ? "unknown" : `${table.rateHz} Hz`}, from: ${table.rateSource === "" ? table.rateFrom : table.rateSource}`,
    ...(table.layout === undefined ? [] : [`  Layout: ${table.layout}`]),
    ...table.hints.map(({ kind, value, unit, line, written }) => {
      const valueText =
        value === undefined ? "said without a unit" : `${value}${unit === "" || unit === "1" ? "" : ` ${unit}`}`;
      return `  Header line ${line}, ${kind}: ${valueText} ("${written}")`;
    }),
  ];
  const channels = table.channels.map((channel) => [
    `${channel.position} ${channel.name === "" ? "(no name)" : channel.name}`,
    [channel.role, channel.limb].filter((part) => part !== undefined).join(" "),
    channel.unit === "" ? "no unit" : channel.unit,
    channel.kind,
    ...figures(channel),
  ]);
  const plates = table.plates.map(({ name, limb, proof, newtons }) => [
    name,
    `${limb}, ${proof}`,
    "N",
    "upward",
    ...figures(newtons),
  ]);
  return [
    ...lines,
    columnsOfText([["Channel", "read as", "unit", "kind", ...figureHeads], ...channels], "  "),
    ...table.channels.map(({ position, confidence, reason }) => `  Channel ${position}: ${confidence}, ${reason}`),
    ...(plates.length === 0
      ? []
      : [columnsOfText([["Plate", "limb", "unit", "sign", ...figureHeads], ...plates], "  ")]),
  ];
}

function c3dLines({ facts, hints, channels, platforms, sampleCount, upwardAxis }: C3dInspection): readonly string[] {
  if (facts === undefined) return ["  C3D file, of which nothing could be read."];
  const { byteOrder, dataType, frames, frameRateHz, samplesPerFrame, analogRateHz, points, generalScale } = facts;
  const hertz = (rate: number | undefined) => (rate === undefined ? "rate unknown" : `${rate} Hz`);
  return [
    `  C3D file: ${byteOrder} byte order, ${dataType} data, ${points} points, ${frames} frames at ${hertz(frameRateHz)}`,
    `  Analog: ${channels.length} channels, ${samplesPerFrame} samples a frame, ${sampleCount} samples at ${hertz(analogRateHz)}, common scale ${generalScale}`,
    ...hints.map(({ name, value }) => `  ${name}: ${value}`),
    ...(upwardAxis === undefined ? [] : [`  Upwards in the laboratory: ${upwardAxis}`]),
    columnsOfText(
      [
        ["Channel", "unit", "scale", "offset", ...figureHeads],
        ...channels.map((channel) => [
          `${channel.number} ${channel.label}`,
          channel.unit === "" ? "no unit" : channel.unit,
          String(channel.scale),
          String(channel.offset),
          ...figures(channel),
        ]),
      ],
      "  ",
    ),
    ...platforms.flatMap(platformLines),
  ];
}

function platformLines(platform: InspectedPlatform): readonly string[] {
  const { number, type, channels, upwardDirection, unit, stored, upwardNewtons } = platform;
  const direction = upwardDirection === undefined ? "unknown" : upwardDirection.join(", ");
  const rows = [
    ...(stored === undefined ? [] : [["vertical force as stored, plate axes", unit, ...figures(stored)]]),
    ...(upwardNewtons === undefined ? [] : [["upward reaction", "N", ...figures(upwardNewtons)]]),
  ];
  return [
    `  Force platform ${number}: type ${type}, channels ${channels.join(", ")}, upwards of the plate ${direction}`,
    ...(rows.length === 0 ? [] : [columnsOfText([["Force", "unit", ...figureHeads], ...rows], "    ")]),
  ];
}

const figureHeads = ["minimum", "maximum", "mean", "unreadable", "values at --samples"];

function figures({ minimum, maximum, mean, unreadable, values }: SeriesFigures): readonly string[] {
  const number = (value: number | undefined | null) => (value === undefined || value === null ? "–" : String(value));
  return [number(minimum), number(maximum), number(mean), String(unreadable), values.map(number).join(" ")];
}
