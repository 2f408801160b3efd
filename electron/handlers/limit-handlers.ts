import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import { writtenTime } from "../cautions/add-cautions.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { readLimits, writeLimits } from "../register/clinic-limits.ts";
import type { RegisterHome } from "../register-host/register-home.ts";

/** The clinic's limits for jump testing: read, and set by name. */
export function limitHandlers(home: RegisterHome): Pick<RegisterHandlers, "limits.read" | "limits.set"> {
  return {
    "limits.read": () => ({ limits: readLimits(home.register).confirmed ?? {} }),
    "limits.set": ({ limits, before }) =>
      home.act(
        "Set the clinic's limits",
        { beyond: "the limits of the clinic, which hold for every session" },
        (register) => {
          const now = readLimits(register).confirmed ?? {};
          if (JSON.stringify(now) !== JSON.stringify(before)) {
            throw new RequestRefused(
              `The limits were set in the meantime by ${now.setBy ?? "somebody"}; nothing was changed. Look at them, then set yours.`,
            );
          }
          const today = writtenTime(register.circumstances.now()).slice(0, 10);
          return { limits: writeLimits(register, limits, today) };
        },
      ),
  };
}
