import { Button, Modal, Radio } from "@mantine/core";
import { useId, useState } from "react";
import type { FieldConflict } from "../../electron/refusals/field-conflict.ts";
import type { SettledField } from "../../electron/refusals/settled-fields.ts";
import { words } from "../words/words.ts";
import { sentenceCase } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.steps;

/** Asks field by field which value stands where another window changed the same fields; nothing is chosen beforehand. */
export function ConflictQuestion() {
  const { conflict } = useWorkspace();
  return (
    <Modal
      opened={conflict !== undefined}
      onClose={() => conflict?.choose(undefined)}
      title={prose.changedElsewhere}
      closeButtonProps={{ "aria-label": prose.close }}
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
      <p>{prose.anotherWindowChanged(fields.length === 1 ? prose.whatYouAreChanging : prose.someOfWhatYou)}</p>
      {fields.map(({ place, words, theirsWords, mineWords }) => (
        <Radio.Group
          key={place}
          name={`${name} ${place}`}
          label={sentenceCase(words)}
          value={kept[place] ?? ""}
          onChange={(value) => setKept({ ...kept, [place]: value === "mine" ? "mine" : "theirs" })}
        >
          <div className="conflict-choices">
            <Radio value="theirs" label={prose.leaveAsItIs(theirsWords)} />
            <Radio value="mine" label={prose.changeToYours(mineWords)} />
          </div>
        </Radio.Group>
      ))}
      {isMissing && (
        <p className="caution finding" role="alert">
          {prose.chooseOneForEach}
        </p>
      )}
      <div className="form-buttons">
        <Button type="submit">{prose.goOnWithThese}</Button>
        <Button variant="default" onClick={() => onChoose(undefined)}>
          {prose.changeNothing}
        </Button>
      </div>
    </form>
  );
}
