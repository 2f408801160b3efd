const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** An ISO date in words, "14 October 2026"; any other text stays as it was stated. */
export function dateInWords(isoDate: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(isoDate) ?? [];
  const name = months[Number(month) - 1];
  return name === undefined || year === undefined || day === undefined ? isoDate : `${Number(day)} ${name} ${year}`;
}

/**
 * An action without what it says about the command line: "State the sampling rate (--rate 1000)." reads "State the
 * sampling rate." on screens, where a form stands beside it.
 */
export function withoutOptions(action: string): string {
  return action.replace(/ or by --[a-z-]+(?= |,|\.)/g, "").replace(/\s*\(--[^)]*\)/g, "");
}

/** A number and its noun: "1 trial", "3 trials". */
export function countOf(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

/** A list in words: "a", "a and b", "a, b and c". */
export function listInWords(items: readonly string[], last: "and" | "or" = "and"): string {
  return items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}

/** A stated text as a sentence: first letter large, full stop at the end; empty stays empty. */
export function asSentence(text: string): string {
  const trimmed = keepUnits(text.trim());
  if (trimmed === "") return "";
  const start = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?]$/.test(start) ? start : `${start}.`;
}

/** A number and the unit behind it stay on one line. */
export function keepUnits(text: string): string {
  return text.replace(/(\d) (?=%|(?:cm|kg|m|s|ms|N|N·s|W|Hz)(?![\p{L}\d]))/gu, "$1\u00a0");
}

/** The first letter large, for headings and captions. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Joins sentences with one space, leaving out empty ones. */
export function sentences(...parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join(" ");
}
