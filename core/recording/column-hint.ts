import { forceUnitOf, isOtherQuantity, isVoltage } from "./force-units.ts";

/**
 * What a column's own name and unit say it is. `unknown`: nothing; `other`: surely neither time nor vertical force;
 * `contradictory`: the name says force or a side, the unit another quantity.
 */
type ColumnKind = "time" | "index" | "left" | "right" | "total" | "force" | "other" | "contradictory" | "unknown";

/** A column's name, taken apart. */
export interface ColumnHint {
  /** As written in the file, unit included. */
  readonly written: string;
  /** The name without its unit. */
  readonly bare: string;
  /** As written; "" where the file is silent. */
  readonly unit: string;
  readonly kind: ColumnKind;
  /** True when the name says that this is the vertical force. */
  readonly isVertical: boolean;
}

const words = (list: string): ReadonlySet<string> => new Set(list.split(" "));

// English, German, French, Spanish; lower case, without accents.
const timeWords = words("time t timestamp seconds zeit zeitpunkt zeitstempel temps tiempo");
const indexWords = words(
  "index idx frame frames sample samples nr no abtastwert abtastung bild echantillon trame muestra cuadro indice",
);
const leftWords = words("left l lt lhs links linke linker linkes linken gauche izquierda izquierdo izq izqda izqdo");
const rightWords = words("right r rt rhs rechts rechte rechter rechtes rechten droite droit derecha derecho dcha dcho");
const totalWords = words(
  "total totale totales sum summe gesamt gesamtkraft summenkraft somme suma both beide deux ambos combined",
);
const forceWords = words("force forces fz vgrf grf load kraft krafte last bodenreaktionskraft fuerza fuerzas charge");
const verticalWords = words("fz vgrf vertical verticale vertikal vertikale z");
const otherWords = words(
  "fx fy mx my mz tz ax ay az cop copx copy x y ap ml anterior posterior medial lateral horizontal " +
    "moment torque velocity speed acceleration displacement position power impulse trigger sync marker event asymmetry " +
    "difference diff temperature geschwindigkeit beschleunigung weg leistung differenz vitesse puissance " +
    "velocidad aceleracion potencia emg angle",
);

/**
 * Reads a column's name: "left (N)", "Kraft links [N]", "FzRight_kN", "Temps (ms)".
 * @param unitBelow the unit from a row of units, "" where there is none.
 */
export function readColumnHint(written: string, unitBelow: string): ColumnHint {
  const { bare, unit: unitInName } = splitUnit(written);
  const unit = stripBrackets(unitBelow) || unitInName;
  const parts = wordsOf(bare);
  const has = (set: ReadonlySet<string>): boolean => parts.some((part) => set.has(part));
  return { written: written.trim(), bare, unit, kind: kindOf(parts, unit), isVertical: has(verticalWords) };
}

function kindOf(parts: readonly string[], unit: string): ColumnKind {
  const has = (set: ReadonlySet<string>): boolean => parts.some((part) => set.has(part));
  const isForce = forceUnitOf(unit) !== undefined || isVoltage(unit);
  if (has(otherWords)) return "other";
  if (isOtherQuantity(unit)) {
    return [leftWords, rightWords, totalWords, forceWords].some(has) ? "contradictory" : "other";
  }
  if (timeUnitOf(unit) !== undefined || (has(timeWords) && !has(forceWords) && !isForce)) return "time";
  const isLeft = has(leftWords);
  const isRight = has(rightWords);
  if (isLeft && isRight) return has(totalWords) ? "total" : "other";
  if (has(totalWords)) return "total";
  if (isLeft) return "left";
  if (isRight) return "right";
  if (has(indexWords) && !isForce) return "index";
  return has(forceWords) || isForce ? "force" : "unknown";
}

/** The time unit a header means, or undefined where it is none. */
export function timeUnitOf(text: string): "s" | "ms" | undefined {
  const unit = text.trim().toLowerCase();
  if (["s", "sec", "secs", "second", "seconds", "sek", "sekunden", "secondes", "segundos"].includes(unit)) return "s";
  if (["ms", "msec", "millisecond", "milliseconds", "millisekunden"].includes(unit)) return "ms";
  return undefined;
}

/** A unit stands in brackets, behind a slash or comma, or as a last word that is a unit of force or time, case and all. */
function splitUnit(written: string): { readonly bare: string; readonly unit: string } {
  const text = written.trim();
  const bracketed = /^(.*?)\s*[([]\s*([^()[\]]*?)\s*[)\]]\s*$/.exec(text);
  if (bracketed !== null) return { bare: bracketed[1]!.trim(), unit: bracketed[2]! };
  const lastWord = /^(.*?)[\s_/,.-]+(?:in\s+|en\s+)?(N|kN|kgf|lbf|V|mV|s|ms)$/.exec(text);
  if (lastWord !== null) return { bare: lastWord[1]!.trim(), unit: lastWord[2]! };
  return { bare: text, unit: "" };
}

function stripBrackets(unit: string): string {
  return unit.trim().replace(/^[([]\s*|\s*[)\]]$/g, "");
}

/** Lower-case words without accents; capitals inside a word and digits behind one begin a new word. */
function wordsOf(name: string): string[] {
  return name
    .replace(/(\p{Ll}|\d)(\p{Lu})/gu, "$1 $2")
    .replace(/(\p{L})(\d)/gu, "$1 $2")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((part) => part !== "");
}
