import { useCallback, useEffect, useRef, useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { checkedWords } from "../../electron/register/copies/copy-words.ts";
import type { CheckedCopy, CopyList, KnownCopy } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { copyTitle } from "./copy-titles.ts";

const prose = words.screens.backups;

/** The list of copies, and checking them one after the other. */
export interface Copies {
  readonly list: CopyList | undefined;
  /** What is being checked just now, or what came of it; "" where nothing was asked. */
  readonly outcome: string;
  readonly isChecking: boolean;
  look(): void;
  checkAll(): void;
  /** Ends the checking behind the copy that is being checked. */
  stop(): void;
  /** Checks one copy whose envelope its passphrase opens. */
  checkOne(copy: KnownCopy, passphrase: Uint8Array): void;
}

export function useCopies(workspace: Workspace): Copies {
  const { host, report } = useWorkspace();
  const [list, setList] = useState<CopyList>();
  const [said, setSaid] = useState("");
  const [isChecking, setChecking] = useState(false);
  const isStopped = useRef(false);
  const look = useCallback(() => void host.call("copies.read", {}).then(setList, report), [host, report]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed workspace is worth another look
  useEffect(look, [look, workspace]);
  const stop = useCallback(() => {
    isStopped.current = true;
  }, []);
  useEffect(() => stop, [stop]);

  const take = useCallback(({ key, copy }: CheckedCopy) => {
    // What could not be kept is shown all the same.
    setList((before) => before && { ...before, copies: before.copies.map((each) => (each.key === key ? copy : each)) });
  }, []);
  const during = async (work: () => Promise<string>) => {
    isStopped.current = false;
    setChecking(true);
    try {
      setSaid(await work());
    } catch (reason) {
      setSaid("");
      report(reason);
    } finally {
      setChecking(false);
    }
  };
  const checkAll = () =>
    during(async () => {
      const copies = list?.copies.filter(({ state }) => state === "there") ?? [];
      const left: string[] = [];
      let damaged = 0;
      for (const [index, each] of copies.entries()) {
        if (isStopped.current) return prose.stopped(index, copies.length);
        setSaid(prose.checkingOneOf(index + 1, copies.length, copyTitle(each)));
        const checked = await host.call("copies.verify", { key: each.key });
        take(checked);
        if (checked.notChecked !== undefined) left.push(`${copyTitle(each)}: ${checked.notChecked}`);
        if ((checked.copy.found?.problems.length ?? 0) > 0) damaged += 1;
      }
      const outcome = damaged === 0 ? prose.nothingDamaged : prose.damaged(damaged);
      return [prose.checked(copies.length, outcome), ...left].join(" ");
    });
  const checkOne = (copy: KnownCopy, passphrase: Uint8Array) =>
    during(async () => {
      setSaid(prose.checking(copyTitle(copy)));
      const checked = await host.call("copies.verify", { key: copy.key, passphrase });
      take(checked);
      return `${copyTitle(copy)}: ${checkedWords(checked)}`;
    });
  return {
    list,
    outcome: said,
    isChecking,
    look,
    checkAll: () => void checkAll(),
    stop,
    checkOne: (copy, passphrase) => void checkOne(copy, passphrase),
  };
}
