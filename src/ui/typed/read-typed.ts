import { plainText } from '../../label/plain-text.ts'
import { QUIT } from '../keys.ts'
import type { Scene } from '../model/scene.ts'
import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { line } from '../text/line.ts'
import { language } from './language.ts'
import { act, go, type Meaning, no, type Shown, type Typed } from './meaning.ts'
import { readHelp } from './read-help.ts'
import { behindWords, intoScanned, misreadCode, placeScanned, unusedLabel, wholeCode } from './read-label.ts'
import { amountFilled, chosen, endedByNumber, fewer, sameCounted } from './read-number.ts'
import { screenWord, toScreen } from './read-screen-word.ts'
import { scanInHall } from './scan-in-hall.ts'
import { isSearch } from './search-words.ts'

/**
 * Content decides what a line is, in this order: nothing, a screen, a whole label code, an answer to the screen's
 * question, a number to choose, a code behind words, a word of the screens, and then what the screen takes lines for.
 */
export function meaningOf(typed: Typed, shown: Shown): Meaning {
  const { scene, screen, page } = shown
  const text = plainText(typed.before + typed.after)
  if (text === '')
    return page.enter
      ? { kind: 'act', act: page.enter.act, says: [line(page.enter.says)] }
      : { kind: 'nothing' }
  if (!('session' in scene)) return scanInHall(typed, scene) ?? inHall(text, shown)
  return (
    toScreen(text) ??
    unusedLabel(text, scene, screen) ??
    wholeCode(text) ??
    placeScanned(typed, scene, screen) ??
    behindWords(typed, scene) ??
    // Behind the scans: a label is looked up also where one looks for words.
    askedHelp(text, screen) ??
    answered(text, page) ??
    chosen(text, shown) ??
    inWords(text, scene, shown)
  )
}

/** What a line means that neither goes to a place nor answers or chooses anything on the page. */
function inWords(text: string, scene: Scene, shown: Shown): Meaning {
  const { screen } = shown
  const meant =
    endedByNumber(text, scene, screen) ??
    sameCounted(text, scene, screen) ??
    amountFilled(text, scene, screen) ??
    fewer(text, shown) ??
    screenWord(text, scene, screen) ??
    misreadCode(text) ??
    intoScanned(text, scene, shown) ??
    searched(text, screen) ??
    language(text, scene, screen)
  return screen.at === 'help' ? readHelp(text, screen, meant) : meant
}

function inHall(text: string, shown: Shown): Meaning {
  const { screen, page } = shown
  const leaving = QUIT.test(text) ? act({ do: 'leave', note: null }, 'leave') : undefined
  const choose = no('Choose by number.', 'Type the number of a row, then Enter; "quit" leaves.')
  return (
    askedHelp(text, screen) ??
    answered(text, page) ??
    chosen(text, shown) ??
    leaving ??
    (screen.at === 'help' ? readHelp(text, screen, choose) : choose)
  )
}

/** `?`, with words to look for or without: no note begins so. Of a job's name its own page says whether it is one. */
function askedHelp(text: string, screen: Screen): Meaning | undefined {
  const about = /^\?\s*(.*)$/.exec(text)?.[1]
  if (about === undefined || screen.at === 'new-job') return undefined
  if (screen.at === 'help') return readHelp(text, screen, { kind: 'nothing' })
  return go(about === '' ? 'all keys and words' : `look for "${about}" among all keys and words`, {
    at: 'help',
    about: about === '' ? null : about,
    from: screen.at,
  })
}

function answered(text: string, { question }: Page): Meaning | undefined {
  if (!question) return undefined
  const answer = question.take(text)
  if (!answer) return undefined
  return 'cannot' in answer ? { kind: 'not-understood', told: answer.cannot } : act(answer.act, answer.says)
}

/** On a list, words look for what answers to them. Without them one comes back to all of it, with Backspace too. */
function searched(text: string, screen: Screen): Meaning | undefined {
  if (screen.at !== 'lies' && screen.at !== 'log') return undefined
  if (!isSearch(text)) return undefined
  const to = { ...screen, words: text }
  return act({ do: screen.words ? 'turn' : 'go', to }, `look for ${text}`)
}
