/** Attributes whose text a person reads or hears. */
const shown = "label|title|aria-label|aria-valuetext|placeholder|description|alt|error|words|problem|caption";

/** What is no text although it has words: names of classes, what a programmer alone reads, imports, comparisons, keys. */
const silent: readonly RegExp[] = [
  /\b(?:className|aria-keyshortcuts|key)=(?:"[^"]*"|\{(?:[^{}]|\{[^{}]*\})*\})/g,
  /\bthrow new Error\((?:"[^"]*"|`[^`]*`)\)/g,
  /^(?:import|export)\s[^;]*?from "[^"]*";|^import "[^"]*";/gm,
  /(?:===|!==|case)\s*"[^"]*"/g,
  /"[^"\n]*"(?=\s*(?:===|!==))/g,
  /"[^"\n]* [^"\n]*"(?=: )/g,
];

/** Names of colours, of styles and of places in a page: no sentences. */
const technical = /var\(--|[[\]<>{}=#]|^\.|px |sans-serif|^Source Sans 3$|^M\S* |^M[\d$]|^\$1 |^(?:textarea|input)\b/;

/** What the program decides by and shows to nobody: answers as they are stated, verdicts, names of classes. */
const codes: ReadonlySet<string> = new Set([
  "caution finding",
  "counts, look",
  "does not",
  "no number",
  "not known",
  "not read",
  "other leg",
  "turned round",
]);

const word = /\p{L}{2,}/u;

/** The text of screens that stands in a source file, each as "file:line text". A scanner of lines, not a compiler. */
export function proseIn(file: string, source: string): readonly string[] {
  const blank = (part: string) => part.replaceAll(/[^\n]/g, " ");
  let text = source.replaceAll(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, blank);
  for (const pattern of silent) text = text.replaceAll(pattern, blank);
  const found = new Map<number, string>();
  const note = (index: number, what: string) => {
    const line = text.slice(0, index).split("\n").length;
    if (!found.has(line)) found.set(line, `${file}:${line} ${what.trim()}`);
  };
  const attribute = new RegExp(`\\b(?:${shown})(?:=|"?: )("[^"\\n]*")`, "g");
  const chosen = new RegExp(`\\b(?:${shown})=\\{[^{}("\\n]*("[^"\\n]*")`, "g");
  for (const pattern of [attribute, chosen]) {
    for (const match of text.matchAll(pattern))
      if (word.test(match[1] ?? "") && !(match[1] ?? "").includes("var(--")) note(match.index, match[0]);
  }
  for (const match of text.matchAll(/"([^"\n]*)"|`([^`]*)`/g)) {
    const said = (match[1] ?? match[2] ?? "").replaceAll(/\$\{[^}]*\}/g, "0");
    if (technical.test(said) || codes.has(said)) continue;
    if (/\p{L}{2,}[,:]? +[\p{L}\d]/u.test(said) || /^\p{Lu}.*[.?!…]$/u.test(said)) note(match.index, said);
  }
  if (!file.endsWith(".tsx")) return [...found.values()];
  const markup = text.replaceAll(/"[^"\n]*"|`[^`]*`/g, blank);
  const pieces = [
    // between two tags, or between a tag and a value, on one line
    /(?<=[^=\s]>)([^<>{}=;()\n]*\p{L}[^<>{}=;()\n]*)(?=<\/|\{)/gu,
    /(?<=\})([^<>{}=;()\n]*\p{L}[^<>{}=;()\n]*)(?=<\/)/gu,
    // a line of its own behind a tag
    /(?<=[^=\s]>\n\s*)([\p{L}][^<>{}=;()\n]*)(?=\n|\{|<)/gu,
  ];
  for (const pattern of pieces) for (const match of markup.matchAll(pattern)) note(match.index, match[0]);
  return [...found.values()];
}
