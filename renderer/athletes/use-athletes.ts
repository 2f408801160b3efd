import { useEffect, useState } from "react";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { today } from "../shell/dates.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { type ChosenFilter, filterFrom } from "./list-filter.ts";

type AthletesReply = HostApi["athletes.list"]["reply"];

/** The athletes that fit; asked again whenever the filter or anything in the workspace changes. */
export function useAthletes(chosen: ChosenFilter, workspace: Workspace): AthletesReply | undefined {
  const { host, report } = useWorkspace();
  const [list, setList] = useState<AthletesReply>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed workspace is worth another look at the register
  useEffect(() => {
    let wanted = true;
    host.call("athletes.list", { filter: filterFrom(chosen, today()) }).then(
      (reply) => {
        if (wanted) setList(reply);
      },
      (reason: unknown) => {
        if (wanted) report(reason);
      },
    );
    return () => {
      wanted = false;
    };
  }, [host, report, chosen, workspace]);
  return list;
}

/** What the register has on one athlete; `gone` where it has nothing any more. */
export function useAthletePage(athlete: string, workspace: Workspace): AthletePage | "gone" | undefined {
  const { host, report } = useWorkspace();
  const [page, setPage] = useState<{ readonly of: string; readonly page: AthletePage | "gone" }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed workspace is worth another look at the register
  useEffect(() => {
    let wanted = true;
    host.call("athletes.page", { athlete }).then(
      (reply) => {
        if (wanted) setPage({ of: athlete, page: reply.page ?? "gone" });
      },
      (reason: unknown) => {
        if (wanted) report(reason);
      },
    );
    return () => {
      wanted = false;
    };
  }, [host, report, athlete, workspace]);
  return page?.of === athlete ? page.page : undefined;
}
