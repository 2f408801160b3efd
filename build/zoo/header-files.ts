import { shortRows } from "./small-jump.ts";
import { forceColumn, plainColumns, timeColumn, type ZooColumn } from "./table-columns.ts";
import { type Expecting, tableFile, type Writing } from "./write-table.ts";
import type { ZooFile } from "./zoo-file.ts";

/** Column names of a language, with a header block in it. */
interface Language {
  readonly called: string;
  readonly names: readonly [time: string, left: string, right: string];
  readonly above: readonly string[];
  readonly writing: Writing;
  readonly expecting?: Expecting;
}

const facts: readonly Language[] = [
  {
    called: "english-colon",
    names: ["Time (s)", "Left Fz (N)", "Right Fz (N)"],
    above: ["Test: Countermovement jump", "Body mass: 68.0 kg", "Date: 2026-01-17", "Sampling rate: 500 Hz", ""],
    writing: { delimiter: "," },
  },
  {
    called: "english-cells",
    names: ["Time (s)", "Left (N)", "Right (N)"],
    above: ["Subject ID,KP-17", "Mass (kg),68.0", "Sample rate (Hz),500", `Number of samples,${shortRows}`, ""],
    writing: { delimiter: "," },
    expecting: { statesCount: true },
  },
  {
    called: "german-semicolon",
    names: ["Zeit [s]", "Kraft links [N]", "Kraft rechts [N]"],
    above: ["Prüfung;Gegenbewegungssprung", "Körpermasse;68,0 kg", "Abtastrate;500 Hz", "Datum;17.01.2026"],
    writing: { delimiter: ";", decimalMark: ",", lineEnd: "\r\n" },
  },
  {
    called: "german-old-encoding",
    names: ["Zeit (s)", "links (N)", "rechts (N)"],
    above: ["Größe: 1,72 m", "Gewicht: 68 kg", `Anzahl Messwerte: ${shortRows}`, "Messfrequenz: 500 Hz"],
    writing: { delimiter: ";", decimalMark: ",", encoding: "Windows-1252", lineEnd: "\r\n" },
    expecting: { statesCount: true, findings: ["encoding-guessed:note"] },
  },
  {
    called: "french-tab",
    names: ["Temps (s)", "Force gauche (N)", "Force droite (N)"],
    above: ["Fréquence d'échantillonnage :\t500 Hz", "Masse corporelle :\t68,0 kg", "Côté :\tdeux jambes"],
    writing: { delimiter: "\t", decimalMark: "," },
  },
  {
    called: "french-wide",
    names: ["temps (s)", "gauche (N)", "droite (N)"],
    above: ["Nombre d'échantillons;160", "Date;17/01/2026", "Saut;contremouvement"],
    writing: { delimiter: ";", decimalMark: ",", encoding: "UTF-16 little", lineEnd: "\r\n" },
    expecting: { statesCount: true },
  },
  {
    called: "spanish-semicolon",
    names: ["Tiempo (s)", "Fuerza izquierda (N)", "Fuerza derecha (N)"],
    above: ["Frecuencia de muestreo: 500 Hz", "Peso: 68 kg", "Prueba: salto con contramovimiento", "Año: 2026"],
    writing: { delimiter: ";", decimalMark: "," },
  },
  {
    called: "spanish-marked",
    names: ["tiempo (s)", "izq (N)", "der (N)"],
    above: ["muestras;160", "frecuencia;500 Hz"],
    writing: { delimiter: ";", decimalMark: ",", encoding: "UTF-8 with mark" },
    expecting: { statesCount: true },
  },
  {
    called: "italian",
    names: ["tempo (s)", "sinistra (N)", "destra (N)"],
    above: ["Frequenza di campionamento = 500 Hz", "Massa corporea = 68,0 kg"],
    writing: { delimiter: ";", decimalMark: "," },
  },
  {
    called: "portuguese",
    names: ["Tempo (s)", "Força esquerda (N)", "Força direita (N)"],
    above: ["Frequência de amostragem: 500 Hz", "Altura da caixa: 30 cm"],
    writing: { delimiter: "\t", decimalMark: "," },
  },
  {
    called: "dutch",
    names: ["tijd (s)", "kracht linkerbeen (N)", "kracht rechterbeen (N)"],
    above: ["Meetfrequentie: 500 Hz", "Lichaamsgewicht: 68 kg"],
    writing: { delimiter: ";", decimalMark: "," },
  },
  {
    called: "polish",
    names: ["Czas (s)", "Siła lewa (N)", "Siła prawa (N)"],
    above: ["Częstotliwość próbkowania: 500 Hz", "Masa ciała: 68 kg"],
    writing: { delimiter: ";", decimalMark: "," },
  },
  {
    called: "swedish",
    names: ["Tid (s)", "Vänster (N)", "Höger (N)"],
    above: ["Samplingsfrekvens\t500 Hz", "Kroppsvikt\t68 kg"],
    writing: { delimiter: "\t", decimalMark: "," },
  },
  {
    called: "czech",
    names: ["čas (s)", "levá (N)", "pravá (N)"],
    above: ["Vzorkovací frekvence: 500 Hz"],
    writing: { delimiter: ";", decimalMark: ",", encoding: "UTF-16 big" },
  },
  {
    called: "finnish",
    names: ["Aika (s)", "Vasen voima (N)", "Oikea voima (N)"],
    above: ["# hyppy 3"],
    writing: { delimiter: "|", decimalMark: "," },
  },
  {
    called: "russian",
    names: ["Время (s)", "левая (N)", "правая (N)"],
    above: ["Частота: 500 Hz", "Масса: 68 kg"],
    writing: { delimiter: ";", decimalMark: "," },
  },
  {
    called: "japanese",
    names: ["時間 (s)", "左 鉛直力 (N)", "右 鉛直力 (N)"],
    above: ["サンプリング周波数,500 Hz", "体重,68 kg"],
    writing: { delimiter: "," },
  },
  {
    called: "chinese",
    names: ["时间 (s)", "左 力 (N)", "右 力 (N)"],
    above: ["采样频率: 500 Hz"],
    writing: { delimiter: "\t" },
  },
];

function languages(): readonly ZooFile[] {
  return facts.map(({ called, names, above, writing, expecting }) =>
    tableFile(`header-${called}.txt`, plainColumns(shortRows, [...names]), { ...writing, above }, expecting),
  );
}

/** The same columns with the units under the names, or the plates above them. */
function beneath(units: readonly string[], above: readonly string[] = []): readonly ZooColumn[] {
  const names = above.length === 0 ? ["Time", "Left", "Right"] : ["t", "Fz", "Fz"];
  return plainColumns(shortRows, names).map((column, index) => ({
    ...column,
    ...(units.length === 0 ? {} : { unitBelow: units[index]! }),
    ...(above.length === 0 ? {} : { nameAbove: above[index]! }),
  }));
}

/** Names, units, comments, footers in every place. */
function blocks(): readonly ZooFile[] {
  const short = plainColumns(shortRows);
  const noted = { findings: ["lines-skipped:note"] };
  const facts = ["Simulated jump", "device clock: none", "channels: 3"];
  return [
    tableFile("units-row.csv", beneath(["s", "N", "N"]), { above: facts }),
    tableFile("units-row-brackets.csv", beneath(["[s]", "[N]", "[N]"]), { delimiter: ";" }),
    tableFile("two-line-names.csv", beneath(["s", "N", "N"], ["", "Left plate", "Right plate"]), { delimiter: ";" }),
    tableFile("two-line-names-tab.tsv", beneath(["(s)", "(N)", "(N)"], ["", "left", "right"]), { delimiter: "\t" }),
    tableFile("comments-above.csv", short, { above: ["# simulated, not measured", "# rate: 500 Hz", "#"] }),
    tableFile("comment-names.csv", short, { above: ["% simulated"], namesLine: "% time (s),left (N),right (N)" }),
    tableFile("comment-between.csv", short, { between: new Map([[40, "# a remark, no sample"]]) }),
    tableFile("slashes-above.txt", short, { delimiter: "\t", above: ["// simulated", "// 500 samples per second"] }),
    tableFile("blank-line-inside.csv", short, { between: new Map([[60, ""]]) }, noted),
    tableFile("blank-lines-behind.csv", short, { below: ["", "", ""] }),
    tableFile("blank-lines-above.csv", short, { above: ["", "Simulated", "", ""], beneathNames: [""] }),
    tableFile("footer-words.csv", short, { below: ["", "End of the recording"] }, noted),
    tableFile("footer-count.csv", short, { below: [`Samples: ${shortRows}`] }, noted),
    tableFile("summary-rows.csv", short, { delimiter: ";", below: ["Mean;310.2;330.4", "Max;402.7;431.1"] }, noted),
    tableFile(
      "summary-german.csv",
      short,
      { delimiter: ";", decimalMark: ",", below: ["Mittelwert;310,2;330,4"] },
      noted,
    ),
    tableFile("padded-facts.csv", short, { delimiter: ";", above: ["Test;jump;", "Rate;500 Hz;", ";;"] }),
    tableFile("facts-side-by-side.csv", short, { delimiter: ";", above: ["rate: 500 Hz; mass: 68 kg; side: both"] }),
    tableFile("names-quoted.csv", short, { namesLine: '"time (s)","left (N)","right (N)"' }),
    tableFile("name-over-two-lines.csv", short, { namesLine: '"time\n(s)","left\n(N)","right\n(N)"' }),
    tableFile("names-by-blanks.txt", short, {
      delimiter: " ",
      separator: "    ",
      namesLine: "time (s)  left (N)  right (N)",
    }),
    tableFile(
      "no-names.csv",
      plainColumns(shortRows).map((column) => ({ ...column, unit: column.role === "force" ? "N" : "s" })),
      { names: false },
      {
        outcome: "asks",
        findings: ["columns-unclear:refusal"],
        answers: { left: 2, right: 3, unit: "N" },
      },
    ),
    tableFile(
      "unit-in-header.csv",
      [
        timeColumn("time (s)", shortRows),
        forceColumn("left", "left", shortRows),
        forceColumn("right", "right", shortRows),
      ],
      { delimiter: ";", above: ["Unit: N"] },
    ),
  ];
}

/** Files that differ in what stands around the rows. */
export function headerFiles(): readonly ZooFile[] {
  return [...languages(), ...blocks()];
}
