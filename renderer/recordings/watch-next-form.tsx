import { Button, Checkbox, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { startsFromBox, testKinds } from "../../core/ground/test-kind.ts";
import type { NextRecordings } from "../../electron/boundary/stated-changes.ts";
import { boxHeightFrom } from "../shell/box-height.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { limbs } from "./answers.ts";
import type { Watch } from "./use-watch.ts";

const prose = words.screens.watch;

interface WatchNextFormProps {
  readonly next: NextRecordings;
  readonly change: Watch["change"];
}

const limbWords = { both: prose.bothLegs, left: prose.leftLeg, right: prose.rightLeg } as const;

/** Says what the next recordings are, so that nothing has to be asked afterwards. File names and headers outrank it. */
export function WatchNextForm({ next, change }: WatchNextFormProps) {
  const [test, setTest] = useState<string>(next.test ?? "");
  const [limb, setLimb] = useState<string>(next.limb ?? "");
  const [box, setBox] = useState(next.dropHeightMetres?.toFixed(2) ?? "");
  const [lead, setLead] = useState<string>(next.leadingLeg ?? "");
  const [isPractice, setIsPractice] = useState(next.practice === true);
  const [problem, setProblem] = useState("");
  const kind = testKinds.find((each) => each === test);
  const fromBox = kind !== undefined && startsFromBox(kind);
  const leads = fromBox && limb === "both";
  return (
    <form
      className="watch-next"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const height = boxHeightFrom(box);
        const hasBox = fromBox && box.trim() !== "";
        if (hasBox && "problem" in height) return setProblem(height.problem);
        setProblem("");
        const chosen = limbs.find((each) => each === limb);
        void change("watch.expect", {
          next: {
            ...(kind !== undefined && { test: kind }),
            ...(chosen !== undefined && { limb: chosen }),
            ...(hasBox && "metres" in height && { dropHeightMetres: height.metres }),
            ...(leads && (lead === "left" || lead === "right") && { leadingLeg: lead }),
            ...(isPractice && { practice: true }),
          },
        });
      }}
    >
      <NativeSelect
        label={prose.theNextRecordings}
        value={test}
        onChange={(event) => setTest(event.currentTarget.value)}
        data={[
          { value: "", label: prose.notStated },
          ...testKinds.map((each) => ({ value: each, label: sentenceCase(words.tests.label(each)) })),
        ]}
      />
      <NativeSelect
        label={prose.with}
        value={limb}
        onChange={(event) => setLimb(event.currentTarget.value)}
        data={[
          { value: "", label: prose.notStated },
          ...limbs.map((each) => ({ value: each, label: sentenceCase(limbWords[each]) })),
        ]}
      />
      {fromBox && (
        <TextInput
          label={prose.fromBoxOfM}
          inputMode="decimal"
          value={box}
          onChange={(event) => setBox(event.currentTarget.value)}
        />
      )}
      {leads && (
        <NativeSelect
          label={prose.steppingOff}
          value={lead}
          onChange={(event) => setLead(event.currentTarget.value)}
          data={[
            { value: "", label: prose.notStated },
            { value: "left", label: prose.leftLegFirst },
            { value: "right", label: prose.rightLegFirst },
          ]}
        />
      )}
      <Checkbox
        label={prose.asPracticeLandingsNoAttempts}
        checked={isPractice}
        onChange={(event) => setIsPractice(event.currentTarget.checked)}
      />
      <Button type="submit" variant="default">
        {prose.stateItForWhatComes}
      </Button>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}
