import type { TestKind } from "./test-kind.ts";

const countermovement = /counter ?movement|\bcmj\b|gegenbewegung|contre ?mouvement|contra ?movi|contro ?movi/;

/** Arms that swing, one language a line. */
const swing = [
  "arms? ?swing(?:s|ing)?|swinging arms?|with arms?|using arms?|free arms?|arms? free",
  "arm ?schwung|arm ?einsatz|mit armen|freien? armen?",
  "avec (?:les |des )?bras|bras libres?|(?:elan|balancement) (?:des|de) bras",
  "con (?:los )?brazos|brazos libres|(?:balanceo|impulso|oscilacion) (?:de|con) (?:los )?brazos",
  "con (?:le )?braccia|braccia libere|(?:slancio|oscillazione) (?:di|delle|con le) braccia",
  "com (?:os )?bracos|bracos livres|balanco (?:de|dos) bracos",
].join("|");
/** Before them: they do not. */
const without = "\\b(?:no|not|non|without|ohne|keine?|sans|sin|senza|sem) (?:(?:an|any|the) )?";
/** Behind them: they are held. */
const held = " (?:crossed|akimbo|folded|fixed|on|at|behind|verschrankt|gekreuzt|crois|cruzad|incrociat|en|na|sur|sui)";
const armSwing = `(?<!${without})\\b(?:${swing})\\b(?!${held})`;

/**
 * What names of files and folders and lines of a header call a test: of a text in lower case, without accents, nothing
 * but letters and single spaces. English, German, French, Spanish, Italian, Portuguese, as far as a word means one test
 * alone. The only list of such words.
 */
export const testWords: Readonly<Record<TestKind, RegExp>> = {
  countermovementJump: countermovement,
  countermovementJumpArmSwing: new RegExp(`\\bcmjas\\b|^(?=.*(?:${countermovement.source})).*${armSwing}`),
  squatJump: /squat ?jump|\bsj\b|kniebeuge ?sprung/,
  dropJump: /drop ?jump|depth ?jump|\bdj\b|tief ?sprung|nieder ?sprung|contrebas/,
  repeatedHops: /\bhops?\b|\bhopping\b|\bhupfer\b|\brebounds?\b/,
  dropLanding: /drop ?landing|depth ?landing/,
};
