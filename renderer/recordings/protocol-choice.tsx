import { NativeSelect } from "@mantine/core";
import { shippedProtocol, shippedProtocols } from "../../core/protocol/shipped-protocols.ts";
import { useWorkspace } from "../shell/workspace.tsx";

/** Chooses what is tested in a session that has no protocol yet. */
export function ProtocolChoice({ folder }: { readonly folder: string }) {
  const { apply } = useWorkspace();
  return (
    <NativeSelect
      className="protocol-choice"
      label="Protocol of this session"
      value=""
      onChange={(event) => {
        const protocol = shippedProtocol(event.currentTarget.value);
        if (protocol !== undefined) void apply("session.change", { folder, change: { protocol } });
      }}
      data={[
        { value: "", label: "not chosen: nothing is counted against it" },
        ...shippedProtocols.map(({ id, name, stage }) => ({ value: id, label: `${stage}: ${name}` })),
      ]}
    />
  );
}
