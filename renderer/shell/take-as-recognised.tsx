import { Button } from "@mantine/core";
import type { Finding } from "../../core/ground/finding.ts";
import { countOf } from "../../core/ground/plain-words.ts";
import { tellFinding } from "../../core/words/finding-in-words.ts";
import { words } from "../words/words.ts";
import { recognitionOffer } from "./recognition.ts";
import { useWorkspace } from "./workspace.tsx";

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
  const { test, reason, others } = offer;
  const take = (files: readonly string[]) => void apply("recordings.answer", { folder, files, answers: { test } });
  const same = others.length === 1 ? "the other that looks the same" : `the ${others.length} others that look the same`;
  return (
    <section className="recognition" aria-label="What the trace looks like">
      {!said.some((each) => tellFinding(each, words).includes(reason)) && (
        <p>
          The trace looks like {words.tests.withArticle(test)}: {reason}.
        </p>
      )}
      <div className="question-buttons">
        <Button size="xs" onClick={() => take([file])}>
          Take it as {words.tests.withArticle(test)}
        </Button>
        {others.length > 0 && (
          <Button
            size="xs"
            variant="default"
            onClick={() => take([file, ...others])}
            title={countOf(others.length + 1, "recording")}
          >
            Take it and {same} so
          </Button>
        )}
      </div>
    </section>
  );
}
