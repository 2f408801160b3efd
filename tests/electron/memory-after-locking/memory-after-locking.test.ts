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
      if (moment.startsWith("locked")) expect(found(secrets), moment).toEqual([]);
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
