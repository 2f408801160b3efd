import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import { checkCopy } from "../register/copies/check-copy.ts";
import { forgetCopy } from "../register/copies/forget-copy.ts";
import { listCopies } from "../register/copies/list-copies.ts";
import type { RegisterHome } from "../register-host/register-home.ts";

type Names = "copies.read" | "copies.verify" | "copies.forget";

/** Every copy that is known: told, checked one at a time, taken off the list. */
export function copyHandlers(home: RegisterHome): Pick<RegisterHandlers, Names> {
  return {
    "copies.read": () => listCopies(home.register),
    "copies.verify": ({ key, passphrase }) => checkCopy(home.register, key, passphrase),
    "copies.forget": ({ key }) => {
      home.act("Take a copy off the list", { beyond: "the list of copies" }, (register) => forgetCopy(register, key));
      return home.workspace.read();
    },
  };
}
