/** For tests of everything else: a process for each of hundreds of passphrases would take minutes. */
export { weaknessOf as weighApart } from "../../electron/register/strength/weakness.ts";
