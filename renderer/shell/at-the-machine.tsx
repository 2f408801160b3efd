import { Autocomplete, Button } from "@mantine/core";
import { useEffect, useState } from "react";
import type { RegisterView } from "../../electron/boundary/register-view.ts";
import { nameAtMachine } from "./carried-name.ts";
import { useWorkspace } from "./workspace.tsx";

/** Who is at the machine: asked once after start and unlocking, said quietly afterwards, and changed without locking. */
export function AtTheMachine({ register }: { readonly register: RegisterView }) {
  const { apply, busy } = useWorkspace();
  const { by, lateActors } = register;
  const [isChanging, setIsChanging] = useState(false);
  const [name, setName] = useState("");
  useEffect(() => nameAtMachine(by ?? ""), [by]);
  const say = async (said: string) => {
    if (await apply("register.actBy", { name: said })) setIsChanging(false);
  };
  if (by !== undefined && !isChanging) {
    return (
      <p className="muted">
        {by === "" ? "No name is given for who is at the machine." : `At the machine: ${by}.`}{" "}
        <button
          type="button"
          className="text-button"
          onClick={() => {
            setName(by);
            setIsChanging(true);
          }}
        >
          Change who is at the machine
        </button>
      </p>
    );
  }
  return (
    <form
      className="at-the-machine"
      onSubmit={(event) => {
        event.preventDefault();
        void say(name.trim());
      }}
    >
      <Autocomplete
        label="Who is at the machine?"
        description="The name stands in the journal beside each change. It can be left out."
        size="xs"
        maxLength={100}
        data={[...lateActors]}
        value={name}
        onChange={setName}
      />
      <Button type="submit" size="xs" variant="default" disabled={busy || name.trim() === ""}>
        Use this name
      </Button>
      <Button size="xs" variant="default" disabled={busy} onClick={() => void say("")}>
        Go on without a name
      </Button>
    </form>
  );
}
