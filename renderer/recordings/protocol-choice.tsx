import { NativeSelect } from "@mantine/core";
import { shippedProtocol, shippedProtocols } from "../../core/protocol/shipped-protocols.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.sessionStatements;

/** Chooses what is tested in a session that has no protocol yet. */
export function ProtocolChoice({ folder }: { readonly folder: string }) {
  const { apply } = useWorkspace();
  return (
    <NativeSelect
      className="protocol-choice"
      label={prose.protocolOfThisSession}
      value=""
      onChange={(event) => {
        const protocol = shippedProtocol(event.currentTarget.value);
        if (protocol !== undefined) void apply("session.change", { folder, change: { protocol } });
      }}
      data={[
        { value: "", label: prose.protocolNotChosen },
        ...shippedProtocols.map(({ id, name, stage }) => ({ value: id, label: `${stage}: ${name}` })),
      ]}
    />
  );
}
