import type { State } from '../../../src/journal/state.ts'
import { labelCode } from '../../../src/label/code.ts'
import { layOut } from '../../../src/label/layout/lay-out.ts'
import { planPages } from '../../../src/label/layout/plan-pages.ts'
import { pdfOf } from '../../../src/label/render/pdf.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { paperPlan } from '../../../src/session/label-facts.ts'
import type { Session } from '../../../src/session/session.ts'
import { containerLabel } from '../../../src/words/label-text/container-label.ts'
import { planText } from '../../../src/words/label-text/plan-text.ts'
import { seenLines } from './lines.ts'
import type { ReadLot } from './read-lot.ts'
import { type ReadContainer, readContainerList, readElsewhere, readLabel } from './read-papers.ts'

/** One fact of the record: so many of a piece lie in a place and belong to a home. */
export interface Fact {
  /** The label code of the container, or the heading of the plan for another place. */
  place: string
  slot: string | null
  name: string
  count: number
  home: string
  step: number
  position: string | null
  alikeAt: string
  /** Whether it must not go back: used, or another has its home. */
  doNotFit: boolean
}

export interface Share {
  facts: number
  rebuilt: number
  lost: Fact[]
}

/** Prints the labels of a job, reads them, and compares what they say with a ledger: its own. */
export async function rebuildFromLabels(
  session: Session,
  label: { width: number; height: number },
  state: State = session.state,
): Promise<Share> {
  const papers = await seenLines(await printedLabels(session, label))
  const read = papers.flatMap((lines) => readLabel(lines) ?? [])
  return shareOf(ledgerFacts(state).filter(isInContainer), factsOfContainers(read))
}

/** Prints the plan of a job, reads it, and compares what it says with a ledger: its own. */
export async function rebuildFromPlan(
  session: Session,
  state: State = session.state,
): Promise<{ inContainers: Share; everything: Share }> {
  const pages = await seenLines(await printedPlan(session))
  const inContainers = factsOfContainers(readContainerList(pages))
  const elsewhere = readElsewhere(pages).flatMap(({ place, lots }) =>
    lots.flatMap((lot) =>
      factsOf(lot, place, lot.goes && { home: lot.goes.home ?? '', step: lot.goes.step }),
    ),
  )
  const record = ledgerFacts(state)
  return {
    inContainers: shareOf(record.filter(isInContainer), inContainers),
    everything: shareOf(record, [...inContainers, ...elsewhere]),
  }
}

function isInContainer({ place }: Fact): boolean {
  return /^\d{9}$/.test(place)
}

/** Every container's label, one a page. */
async function printedLabels(
  { state }: Session,
  size: { width: number; height: number },
): Promise<Uint8Array> {
  const drawings = [...state.containers.values()]
    .filter(({ voided }) => voided === null)
    .flatMap(({ no }) => {
      const content = containerLabel(state, no, '25 Nov 2026', labelCode(state.job.no, no))
      const laid = layOut(content, size, { typeface: typeface(), dpi: 600 })
      // What does not go onto a label of that size is on no label, and counts as lost.
      return laid.ok ? [laid.drawing] : []
    })
  return pdfOf(drawings, { typeface: typeface(), title: 'labels', made: new Date(0) })
}

async function printedPlan(session: Session): Promise<Uint8Array> {
  const codeOf = (no: number) => labelCode(session.state.job.no, no)
  const plan = planText(session.state, paperPlan(session), '25 Nov 2026', codeOf)
  const laid = planPages(plan, { width: 210, height: 297 }, { typeface: typeface(), dpi: 600 })
  if (!laid.ok) throw new Error(JSON.stringify(laid.refusal))
  return pdfOf(laid.pages, { typeface: typeface(), title: 'plan', made: new Date(0) })
}

const HEADINGS: Record<string, string> = {
  machine: 'In the machine, to come out',
  bench: 'On the bench',
  out: 'Out',
  supplier: 'At a supplier',
  spare: 'Spare',
  scrap: 'Scrap',
  lost: 'Lost',
}

/** The facts of the ledger that paper ought to give back: where each piece lies that is not at home, and its home. */
function ledgerFacts({ ledger, job, used }: State): Fact[] {
  const facts: Fact[] = []
  const replaced = new Set([...ledger.accounts.values()].map(({ piece }) => piece.replaces))
  for (const { piece, home, at } of ledger.accounts.values()) {
    const isAside = piece.kind === 'aid' || piece.kind === 'tool'
    for (const [place, count] of at) {
      if (place === 'toolbox' || (place === 'machine' && !isAside)) continue
      const [, no, slot = null] = /^c(\d+)(?:\/(.+))?$/.exec(place) ?? []
      // An aid belongs into the toolbox: of it, paper says where in the machine it is, and since which step.
      facts.push({
        place: no === undefined ? (HEADINGS[place] ?? place) : labelCode(job.no, Number(no)),
        slot,
        name: `${piece.name}${piece.size === undefined ? '' : ` ${piece.size}`}`,
        count,
        home: isAside ? '' : home.at,
        step: isAside && place !== 'machine' ? 0 : piece.step,
        position: home.position ?? (isAside && place === 'machine' ? home.at : null),
        alikeAt: [...(home.alikeAt ?? [])].sort().join(' '),
        doNotFit: place !== 'scrap' && (used.has(piece.id) || replaced.has(piece.id)),
      })
    }
  }
  return facts
}

function factsOfContainers(containers: readonly ReadContainer[]): Fact[] {
  return containers.flatMap(({ code, status, lots, homes }) =>
    lots.flatMap((lot) => {
      const step = lot.goes?.step
      const home = step === undefined ? homes[0] : homes.find((each) => each.step === step)
      const told = { ...lot, status: lot.status ?? status }
      return factsOf(
        told,
        code,
        lot.goes?.home ? { home: lot.goes.home, step: lot.goes.step } : (home ?? null),
      )
    }),
  )
}

function factsOf(lot: ReadLot, place: string, goes: { home: string; step: number } | null): Fact[] {
  const doNotFit = /DO NOT FIT$/.test(lot.status ?? '')
  const fact = { place, name: lot.name, home: goes?.home ?? '', step: goes?.step ?? 0, doNotFit }
  const alikeAt = [...lot.alikeAt].sort().join(' ')
  if (lot.positions.length === 0) return [{ ...fact, count: lot.count, slot: null, position: null, alikeAt }]
  return lot.positions.map(({ position, slot }) => ({ ...fact, count: 1, slot, position, alikeAt: '' }))
}

function shareOf(record: readonly Fact[], paper: readonly Fact[]): Share {
  const left = new Map<string, number>()
  for (const fact of paper) left.set(keyOf(fact), (left.get(keyOf(fact)) ?? 0) + 1)
  const lost = record.filter((fact) => {
    const key = keyOf(fact)
    const there = left.get(key) ?? 0
    left.set(key, there - 1)
    return there <= 0
  })
  return { facts: record.length, rebuilt: record.length - lost.length, lost }
}

// One piece is named in the singular on paper: `cam cap I1` is one of the `cam caps`.
function keyOf({ place, slot, name, count, home, step, position, alikeAt, doNotFit }: Fact): string {
  // The size of a shim stands on it: of a set of many sizes paper gives back which position each one has.
  const sizeless = position === null ? name : name.replace(/ \d+(?:\.\d+)?$/, '')
  const singular = sizeless.replace(/(\p{L})s\b/gu, '$1')
  return JSON.stringify([place, slot, singular, count, home, step, position, alikeAt, doNotFit])
}
