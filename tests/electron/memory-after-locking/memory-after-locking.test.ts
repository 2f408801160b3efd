import { expect, test } from "vitest";
import { temporaryFolder } from "../register/register-world.ts";
import { whyNotReadable } from "./process-memory.ts";
import { found, walk } from "./walk.ts";

const reason = whyNotReadable();

test.skipIf(reason !== undefined)(
  `after locking, the memory of the host holds neither passphrase nor key${reason === undefined ? "" : ` (not searched: ${reason})`}`,
  async () => {
    const moments = await walk(temporaryFolder());
    expect(moments.map(({ moment }) => moment)).toHaveLength(4);
    for (const { moment, secrets, records } of moments) {
      // Setting a passphrase measures its strength as a text, which may outlive the thread; unlocking makes none of it.
      const mayBeText = moment === "locked for the first time";
      const left = found(secrets).filter((each) => !(mayBeText && each.includes("passphrase")));
      if (moment.startsWith("locked")) expect(left, moment).toEqual([]);
      else {
        // The search finds what is there: while it is unlocked the host works with them.
        expect(found(secrets), moment).toEqual(
          expect.arrayContaining(["data key, first half", "data key, second half"]),
        );
        expect(found(records), moment).toEqual(expect.arrayContaining(["name of the athlete, UTF-8"]));
      }
    }
  },
  300_000,
);
