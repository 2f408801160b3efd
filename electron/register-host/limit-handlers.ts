import { writtenTime } from "../cautions/add-cautions.ts";
import { readLimits, writeLimits } from "../register/clinic-limits.ts";
import type { RegisterHandlers } from "./register-handlers.ts";
import type { RegisterHome } from "./register-home.ts";

/** The clinic's limits for jump testing: read, and set by name. */
export function limitHandlers(home: RegisterHome): Pick<RegisterHandlers, "limits.read" | "limits.set"> {
  return {
    "limits.read": () => ({ limits: readLimits(home.register).confirmed ?? {} }),
    "limits.set": ({ limits }) =>
      home.act(
        "Set the clinic's limits",
        { beyond: "the limits of the clinic, which hold for every session" },
        (register) => {
          const today = writtenTime(register.circumstances.now()).slice(0, 10);
          return { limits: writeLimits(register, limits, today) };
        },
      ),
  };
}
