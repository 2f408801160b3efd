import { afterEach, expect, test } from "vitest";
import { MachineTrouble } from "../../../electron/refusals/request-refused.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { removePassphrase, setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { type Step, tellSteps } from "../../../electron/register/steps.ts";
import { strongPassphrase } from "../strong-passphrase.ts";
import { filledRegister, testRegister } from "./register-world.ts";

const passphrase = passphraseBytes(strongPassphrase);

afterEach(() => tellSteps(undefined));

/** The disk is full from this step on. */
function fullAfter(step: Step): void {
  tellSteps((reached) => {
    if (reached === step) throw new MachineTrouble("The disk is full.", "Make room and do it again.");
  });
}

test("broken off while a passphrase is set: that the register has none yet is said, and the next opening ends it", async () => {
  const register = await filledRegister();
  fullAfter("conversion begun");
  expect(() => setPassphrase(register, passphrase)).toThrow(
    "The disk is full. The register has no passphrase yet: the next opening goes on with it, and puts it under this one. Make room and do it again.",
  );
  tellSteps(undefined);
  expect(register.encrypted).toBe(false);
  register.close();
  const again = await testRegister({ file: register.file });
  expect([again.encrypted, again.conversion, again.verify().problems]).toEqual([true, undefined, []]);
});

test("broken off while it is taken away: that whoever has the file can read it is said, and the next opening ends it", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  fullAfter("conversion begun");
  expect(() => removePassphrase(register)).toThrow(
    "The disk is full. The register has no passphrase any more, and whoever has the file can read it: the next opening goes on with writing it in the clear.",
  );
  tellSteps(undefined);
  register.close();
  const again = await testRegister({ file: register.file });
  expect([again.encrypted, again.conversion, again.verify().problems]).toEqual([false, undefined, []]);
});

test("a locked register has its passphrase neither changed nor taken away, and says that it is locked", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  register.lock();
  expect(() => removePassphrase(register)).toThrow("The register is locked");
  expect(() => setPassphrase(register, passphraseBytes("another long winter evening"))).toThrow(
    "The register is locked",
  );
  register.unlock(passphrase);
  expect(register.verify().problems).toEqual([]);
});
