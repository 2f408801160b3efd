import { Button, Modal, Radio } from "@mantine/core";
import { useId, useState } from "react";
import type { FieldConflict, SettledField } from "../../electron/refusals/field-conflict.ts";
import { sentenceCase } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

/** Asks field by field which value stands where another window changed the same fields; nothing is chosen beforehand. */
export function ConflictQuestion() {
  const { conflict } = useWorkspace();
  return (
    <Modal
      opened={conflict !== undefined}
      onClose={() => conflict?.choose(undefined)}
      title="Changed elsewhere in the meantime"
      closeButtonProps={{ "aria-label": "Close" }}
      size="lg"
      centered
      transitionProps={{ duration: 0 }}
    >
      {conflict !== undefined && <Choices fields={conflict.fields} onChoose={conflict.choose} />}
    </Modal>
  );
}

interface ChoicesProps {
  readonly fields: readonly FieldConflict[];
  readonly onChoose: (settled: readonly SettledField[] | undefined) => void;
}

function Choices({ fields, onChoose }: ChoicesProps) {
  const [kept, setKept] = useState<Readonly<Record<string, SettledField["keep"]>>>({});
  const [isMissing, setMissing] = useState(false);
  const name = useId();
  const keep = () => {
    const settled = fields.flatMap(({ place, theirs }) => {
      const chosen = kept[place];
      return chosen === undefined ? [] : [{ place, theirs, keep: chosen }];
    });
    if (settled.length === fields.length) onChoose(settled);
    else setMissing(true);
  };
  return (
    <form
      className="session-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <p>
        Another window changed {fields.length === 1 ? "what you are changing" : "some of what you are changing"}.
        Nothing of yours was kept yet.
      </p>
      {fields.map(({ place, words, theirsWords, mineWords }) => (
        <Radio.Group
          key={place}
          name={`${name} ${place}`}
          label={sentenceCase(words)}
          value={kept[place] ?? ""}
          onChange={(value) => setKept({ ...kept, [place]: value === "mine" ? "mine" : "theirs" })}
        >
          <div className="conflict-choices">
            <Radio value="theirs" label={`Leave it as it is now: ${theirsWords}`} />
            <Radio value="mine" label={`Change it to yours: ${mineWords}`} />
          </div>
        </Radio.Group>
      ))}
      {isMissing && (
        <p className="caution finding" role="alert">
          Choose one for each.
        </p>
      )}
      <div className="form-buttons">
        <Button type="submit">Go on with these</Button>
        <Button variant="default" onClick={() => onChoose(undefined)}>
          Change nothing
        </Button>
      </div>
    </form>
  );
}
