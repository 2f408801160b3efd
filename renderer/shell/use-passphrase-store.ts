import { useCallback, useEffect, useState } from "react";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import { useWorkspace } from "./workspace.tsx";

type StoreState = HostApi["application.describe"]["reply"]["passphraseStore"];

/** Whether the operating system can keep the passphrase, and does; asked once, and again at `look`. */
export function usePassphraseStore(): { readonly state: StoreState; readonly look: () => void } {
  const { host, report } = useWorkspace();
  const [state, setState] = useState<StoreState>("absent");
  const look = useCallback(() => {
    host.call("application.describe", {}).then(({ passphraseStore }) => setState(passphraseStore), report);
  }, [host, report]);
  useEffect(look, [look]);
  return { state, look };
}
