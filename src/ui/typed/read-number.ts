import { entryText } from '../../words/entries.ts'
import { fluidName } from '../../words/names.ts'
import { fewerFitted, fewerForm } from '../model/fewer-fitted.ts'
import { countedAgain } from '../model/same-again.ts'
import { cardNow, type Scene } from '../model/scene.ts'
import { withWordsAgain } from '../model/words-again.ts'
import type { Screen } from '../navigation.ts'
import type { Choice, Page } from '../page.ts'
import { line } from '../text/line.ts'
import { language } from './language.ts'
import { act, type Meaning, noNumber, type Shown } from './meaning.ts'

/** A number alone chooses what has it on the page; `0` takes back the last entry. */
export function chosen(text: string, { scene, screen, page }: Shown): Meaning | undefined {
  if (text === '0' && 'session' in scene) return takingBack(scene)
  const long = LONG_NUMBERS[screen.at]
  if (long !== undefined && /^\d{3,5}$/.test(text)) {
    const choice = page.choice(Number(text))
    return choice
      ? act(choice.act, choice.says)
      : noNumber(`There is no ${long} ${Number(text)}.`, 'The rows show those there are.')
  }
  return numberChosen(text, page)
}

/** Where the numbers are those of the record, and may be longer than a choice is elsewhere. */
const LONG_NUMBERS: Partial<Record<Screen['at'], string>> = {
  lies: 'container',
  back: 'step',
  left: 'line',
  due: 'line',
  photos: 'picture',
  arrivals: 'line',
  help: 'row',
}

function numberChosen(text: string, page: Page): Meaning | undefined {
  if (!/^\d{1,2}$/.test(text)) return undefined
  const choice = page.choice(Number(text))
  return choice
    ? act(choice.act, choice.says)
    : noNumber(`Nothing has the number ${text} here.`, howToChoose(page))
}

function howToChoose(page: Page): string {
  const form = fewerForm(firstRows(page))
  return `A number chooses a row that has it${form === null ? '' : `; ${form}`}.`
}

function firstRows(page: Page): Choice[] {
  return Array.from({ length: 9 }, (_, index) => page.choice(index + 1)).filter((row) => row !== undefined)
}

/** The last entry, by its number, where it was written here: a finger takes back what its own hand did. */
function takingBack({ session }: Scene): Meaning {
  const { state } = session
  const last = session.entries().findLast(({ n }) => n === state.inForce.at(-1))
  if (!last || state.inForce.length < 2)
    return noNumber('There is nothing to take back.', 'What is recorded first can be.')
  if (session.isFromElsewhere(last.n)) {
    const what = `Entry ${last.n} was not recorded here: ${entryText(state, last)}.`
    const cure = 'Whoever did that may not know: "undo" takes it back all the same.'
    return act({ do: 'say', what, cure }, what)
  }
  return act(
    { do: 'send', commands: [{ do: 'undo', entry: last.n }] },
    `take back entry ${last.n}: ${entryText(state, last)}`,
  )
}

/** `... because 1`: a reason that was given before, by its number. */
export function endedByNumber(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const whole = withWordsAgain(scene, text)
  const meaning = whole === null ? undefined : language(whole, scene, screen)
  return meaning?.kind === 'act' ? { ...meaning, says: [line(whole ?? '')] } : undefined
}

/** Where things come off, `8.2` is eight of the second of the words that were written before. */
export function sameCounted(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const counted = screen.at === 'off' ? countedAgain(text, scene) : null
  return counted === null ? undefined : language(counted, scene, screen)
}

/** A decimal number alone, as from a number pad, is the amount of the fluid that is to be filled next. */
export function amountFilled(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const { next } = cardNow(scene.session)
  if (!/^\d{1,4}[.,]\d{1,3}$/.test(text) || next.kind !== 'todo' || next.todo.kind !== 'fill')
    return undefined
  const { id } = next.todo.fluid
  const meaning = language(`fill ${id} ${text}`, scene, screen)
  if (meaning.kind !== 'act') return meaning
  const litres = text.replace(',', '.')
  return { ...meaning, says: [line(`fill ${litres} L of ${fluidName(scene.session.state, id)}`)] }
}

/** In a step, `7.1` is seven of what its first row puts home. */
export function fewer(text: string, { screen, page }: Shown): Meaning | undefined {
  const row = screen.at === 'step' ? /^\d{1,3}[.,](\d?)$/.exec(text)?.[1] : undefined
  if (row === undefined) return undefined
  const choice = fewerFitted(text, page)
  if (choice) return act(choice.act, choice.says)
  const form = fewerForm(firstRows(page))
  return form === null
    ? undefined
    : noNumber(`Row ${row || 1} fits no number of pieces.`, `Of a row that does: ${form}.`)
}
