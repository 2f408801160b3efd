import { Autocomplete, Button } from "@mantine/core";
import { useEffect, useState } from "react";
import type { RegisterView } from "../../electron/boundary/register-view.ts";
import { words } from "../words/words.ts";
import { nameAtMachine } from "./carried-name.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.lock;

/** Who is at the machine: asked once after start and unlocking, said quietly afterwards, and changed without locking. */
export function AtTheMachine({ register }: { readonly register: RegisterView }) {
  const { apply, busy } = useWorkspace();
  const { by, lateActors } = register;
  const [isChanging, setIsChanging] = useState(false);
  const [name, setName] = useState("");
  useEffect(() => nameAtMachine(by ?? ""), [by]);
  const say = async (person: string) => {
    if (await apply("register.actBy", { name: person })) setIsChanging(false);
  };
  if (by !== undefined && !isChanging) {
    return (
      <p className="muted">
        {by === "" ? prose.noName : prose.atTheMachine(by)}{" "}
        <button
          type="button"
          className="text-button"
          onClick={() => {
            setName(by);
            setIsChanging(true);
          }}
        >
          {prose.changeWhoIsThere}
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
        label={prose.whoIsThere}
        description={prose.whereTheNameStands}
        size="xs"
        maxLength={100}
        data={[...lateActors]}
        value={name}
        onChange={setName}
      />
      <Button type="submit" size="xs" variant="default" disabled={busy || name.trim() === ""}>
        {prose.useThisName}
      </Button>
      <Button size="xs" variant="default" disabled={busy} onClick={() => void say("")}>
        {prose.goOnWithoutAName}
      </Button>
    </form>
  );
}
