/**
 * What a terminal would act on or a reader would not see: control characters of both sets, those that turn the direction
 * of writing, separators of lines and paragraphs. Line breaks and tabs are what text is laid out with.
 */
const unseen = /(?![\n\t]|\r\n)[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]/gu;
const unseenInLine = /[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]/gu;

/**
 * Text as it may go to a terminal, whatever stands in the names of files, columns and athletes: what is unseen is
 * written as `\u001b`. In a JSON document it can only stand within strings, where this means the same value.
 */
export function visibleText(text: string): string {
  return text.replace(unseen, escaped);
}

/** The same for what must stay on one line and in one column. */
export function visibleLine(text: string): string {
  return text.replace(unseenInLine, escaped);
}

/** The same for every text within plain data that is going to be laid out as lines and columns. */
export function withVisibleTexts<Data>(data: Data): Data {
  return visible(data) as Data;
}

function visible(data: unknown): unknown {
  if (typeof data === "string") return visibleLine(data);
  if (Array.isArray(data)) return data.map(visible);
  if (typeof data !== "object" || data === null || Object.getPrototypeOf(data) !== Object.prototype) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [visibleLine(key), visible(value)]));
}

function escaped(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}
