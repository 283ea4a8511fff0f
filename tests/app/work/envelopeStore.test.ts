import { describe, expect, it } from "vitest";
import { createStore } from "zustand/vanilla";
import type { StageSettings } from "../../../src/app/state/stageSettings.ts";
import { createWorkbenchStore } from "../../../src/app/state/workbenchStore.ts";
import type {
  DrawnEnvelope,
  EnvelopeAnswer,
  EnvelopeRequest,
} from "../../../src/app/work/envelopeMessages.ts";
import { type EnvelopeState, envelopeStoreOf } from "../../../src/app/work/envelopeStore.ts";
import type { SectionAnswer, SectionRequest } from "../../../src/app/work/sectionMessages.ts";
import { sectionStoreOf } from "../../../src/app/work/sectionStore.ts";
import { exampleText } from "../exampleText.ts";

/** An envelope store with stand-ins for its workers. */
function standIn() {
  const workbench = createWorkbenchStore(exampleText, "example.json");
  const begun: { request: EnvelopeRequest; isStopped: boolean; answer: (answer: EnvelopeAnswer) => void }[] =
    [];
  const envelope = envelopeStoreOf(workbench, (request) => {
    const one = { request, isStopped: false, answer: (_: EnvelopeAnswer) => {} };
    begun.push(one);
    return {
      onAnswer: (listener) => {
        one.answer = listener;
      },
      stop: () => {
        one.isStopped = true;
      },
    };
  });
  const done = ({ choice, travel, edges }: EnvelopeRequest): EnvelopeAnswer => ({
    kind: "done",
    drawn: { choice, travel, edges, sides: [] },
  });
  return { workbench, envelope, begun, done };
}

describe("the envelope on the stage", () => {
  it("tells its progress, then the envelope, and is kept as long as the truck is", () => {
    const { envelope, begun, done } = standIn();
    envelope.ask({ choice: "whole", travel: 0 });
    begun[0]!.answer({ kind: "progress", share: 0.4 });
    expect(envelope.store.getState()).toMatchObject({ status: "working", share: 0.4 });
    begun[0]!.answer(done(begun[0]!.request));
    expect(envelope.store.getState().status).toBe("done");
    envelope.ask(null);
    expect(envelope.store.getState().status).toBe("none");
    envelope.ask({ choice: "whole", travel: 30 });
    expect(envelope.store.getState().status).toBe("done");
    expect(begun).toHaveLength(1);
    envelope.ask({ choice: "stance", travel: 30 });
    expect(begun).toHaveLength(2);
  });

  it("is stopped when it is no longer wanted, and what still comes of it changes nothing", () => {
    const { envelope, begun, done } = standIn();
    envelope.ask({ choice: "whole", travel: 0 });
    envelope.ask(null);
    expect(begun[0]!.isStopped).toBe(true);
    begun[0]!.answer(done(begun[0]!.request));
    expect(envelope.store.getState().status).toBe("none");
  });

  it("is worked out anew for another truck, but not while that is being dragged about", () => {
    const { workbench, envelope, begun, done } = standIn();
    envelope.ask({ choice: "straight", travel: 0 });
    begun[0]!.answer(done(begun[0]!.request));
    workbench.getState().beginGesture();
    workbench.getState().editField(["knuckle", "hubFace"], "6");
    workbench.getState().editField(["knuckle", "hubFace"], "5 3/4");
    expect(envelope.store.getState().status).toBe("none");
    expect(begun).toHaveLength(1);
    workbench.getState().endGesture();
    expect(begun).toHaveLength(2);
    expect(begun[1]!.request.setup.knuckle.hubFace).toBeCloseTo(5.75 * 25.4, 9);
    expect(envelope.store.getState().status).toBe("working");
  });

  it("says why it cannot be", () => {
    const { envelope, begun } = standIn();
    envelope.ask({ choice: "whole", travel: 0 });
    begun[0]!.answer({ kind: "failed", message: "no pose" });
    expect(envelope.store.getState()).toEqual({ status: "failed", message: "no pose" });
    expect(begun[0]!.isStopped).toBe(true);
  });
});

describe("the section on the stage", () => {
  const plane = { axis: "x", at: 0 } as const;
  const answer = (id: number, at = 0): SectionAnswer => ({
    ...{ kind: "cut", id, drawn: { plane: { axis: "x", at }, figures: [], nearest: null } },
  });

  function cutting() {
    const workbench = createWorkbenchStore(exampleText, "example.json");
    const settings = createStore<StageSettings>()(() => ({ section: null }) as unknown as StageSettings);
    const envelopes = createStore<EnvelopeState>()(() => ({ status: "none" }));
    const asked: SectionRequest[] = [];
    const heard: ((answer: SectionAnswer) => void)[] = [];
    const section = sectionStoreOf(workbench, settings, envelopes, () => ({
      ask: (request) => asked.push(request),
      onAnswer: (listener) => heard.push(listener),
    }));
    const cuts = () => asked.flatMap((request) => (request.kind === "cut" ? [request] : []));
    return {
      workbench,
      settings,
      envelopes,
      section,
      asked,
      cuts,
      say: (it: SectionAnswer) => heard[0]!(it),
    };
  }

  it("asks for the last of what a drag went through, one at a time", () => {
    const { workbench, settings, section, cuts, say } = cutting();
    expect(cuts()).toHaveLength(0);
    settings.setState({ section: plane });
    for (const steer of [0.1, 0.2, 0.3]) workbench.getState().setSteer(steer);
    expect(cuts()).toHaveLength(1);
    say(answer(1));
    expect(section.getState().drawn).not.toBeNull();
    expect(cuts().map(({ cut }) => cut.steer)).toEqual([0, 0.3]);
    say(answer(2));
    expect(cuts()).toHaveLength(2);
  });

  it("hands over an envelope once, and shows nothing after it is put away", () => {
    const { settings, envelopes, section, asked, say } = cutting();
    settings.setState({ section: plane });
    say(answer(1));
    const drawn: DrawnEnvelope = { choice: "whole", travel: 0, edges: [], sides: [] };
    envelopes.setState({ status: "done", drawn }, true);
    expect(asked.map(({ kind }) => kind)).toEqual(["truck", "envelope", "cut", "envelope", "cut"]);
    settings.setState({ section: null });
    say(answer(2));
    expect(section.getState().drawn).toBeNull();
  });
});
