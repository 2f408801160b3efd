import { Checkbox, TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { carriedName } from "../shell/carried-name.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { FormDialog } from "./form-dialog.tsx";
import { meantNow } from "./moments.ts";
import { noOpening, openable, openingFrom, type WrittenOpening, wantsDoctor } from "./written-opening.ts";

const prose = words.screens.cautionForms;

interface OpeningFormProps {
  readonly session: SessionResult;
  readonly date: string;
  readonly onClose: () => void;
}

/** The named treating clinician opens what is closed, each with its reason beside it, by a reason of their own. */
export function OpeningForm({ session, date, onClose }: OpeningFormProps) {
  const { apply } = useWorkspace();
  const { gate, folder } = session;
  const [written, setWritten] = useState<WrittenOpening>(() => ({ ...noOpening, by: carriedName() }));
  const [problem, setProblem] = useState("");
  const field = (name: Exclude<keyof WrittenOpening, "chosen">) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement>) =>
      setWritten({ ...written, [name]: event.currentTarget.value }),
  });
  const choose = (code: string, chosen: boolean) =>
    setWritten({
      ...written,
      chosen: chosen ? [...written.chosen, code] : written.chosen.filter((each) => each !== code),
    });
  const offered = openable(gate.closures);
  const others = gate.closures.filter((each) => !offered.includes(each));
  const stays = [...offered.filter(({ code }) => !written.chosen.includes(code)), ...others];
  const needsDoctor = wantsDoctor(gate.closures, written);
  const keep = async () => {
    const opening = openingFrom(written, gate.closures, meantNow(date));
    if ("problem" in opening) return setProblem(opening.problem);
    setProblem("");
    if (await apply("cautions.add", { folder, addition: opening.addition })) onClose();
  };
  return (
    <FormDialog
      title={prose.openWhatIsClosed}
      keep={prose.openIt}
      problem={problem}
      onKeep={() => void keep()}
      onClose={onClose}
    >
      <p>{prose.onlyTheClinicianOpens}</p>
      <fieldset className="form-part">
        <legend className="small-title">{prose.whatIsOpened}</legend>
        {offered.map(({ code, reason, openedBy }) => (
          <Checkbox
            key={code}
            label={openedBy === "clinician with doctor" ? prose.doctorMustHaveAgreed(reason) : reason}
            checked={written.chosen.includes(code)}
            onChange={(event) => choose(code, event.currentTarget.checked)}
          />
        ))}
      </fieldset>
      <div className="caution-fields">
        <TextInput label={prose.treatingClinician} {...field("by")} />
        <TextInput className="answer-wide" label={prose.reason} {...field("reason")} />
        {needsDoctor && (
          <>
            <TextInput label={prose.doctorWhoAgreed} {...field("doctor")} />
            <TextInput label={prose.agreedOn} type="date" {...field("agreed")} />
          </>
        )}
      </div>
      <div role="status">
        {stays.length > 0 && <p className="muted">{prose.staysClosed(stays.map(({ reason }) => reason).join(" "))}</p>}
      </div>
    </FormDialog>
  );
}
