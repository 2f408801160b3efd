import { RequestRefused } from "../../refusals/request-refused.ts";

export function locked(): RequestRefused {
  return new RequestRefused("The register is locked: give its passphrase to read it.");
}
