import { Button } from "@mantine/core";
import type { Finding } from "../../core/ground/finding.ts";

import { tellFinding } from "../../core/words/finding-in-words.ts";
import { words } from "../words/words.ts";
import { recognitionOffer } from "./recognition.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;
const counts = words.screens.counts;

interface TakeAsRecognisedProps {
  readonly folder: string;
  readonly file: string;
  /** What is said above it; the reason is not said twice. */
  readonly said: readonly Finding[];
}

/** Accepts what the trace looks like with one click, for this file or for all that look the same. Never imposed. */
export function TakeAsRecognised({ folder, file, said }: TakeAsRecognisedProps) {
  const { workspace, apply } = useWorkspace();
  const offer = recognitionOffer(workspace?.session?.trials ?? [], file);
  if (offer === undefined) return null;
  const { test, others } = offer;
  const reason = words.recognition(offer);
  const take = (files: readonly string[]) => void apply("recordings.answer", { folder, files, answers: { test } });
  const same = others.length === 1 ? prose.otherAlike : prose.othersAlike(others.length);
  return (
    <section className="recognition" aria-label={prose.whatTraceLooksLike}>
      {!said.some((each) => tellFinding(each, words).includes(reason)) && (
        <p>{prose.traceLooksLike(words.tests.withArticle(test), reason)}</p>
      )}
      <div className="question-buttons">
        <Button size="xs" onClick={() => take([file])}>
          {prose.takeItAs(words.tests.withArticle(test))}
        </Button>
        {others.length > 0 && (
          <Button
            size="xs"
            variant="default"
            onClick={() => take([file, ...others])}
            title={counts.recordings(others.length + 1)}
          >
            {prose.takeItAndOthers(same)}
          </Button>
        )}
      </div>
    </section>
  );
}
