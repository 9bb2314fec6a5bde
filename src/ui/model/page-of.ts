import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { backPage } from './back-page.ts'
import { countPage } from './count-page.ts'
import { differencesPage } from './differences-page.ts'
import { drawPage } from './draw-page.ts'
import { arrivalsPage } from './due/arrivals-page.ts'
import { buyPage } from './due/buy-page.ts'
import { comparePage } from './due/compare-page.ts'
import { duePage } from './due/due-page.ts'
import { judgePage } from './due/judge-page.ts'
import { orderPage } from './due/order-page.ts'
import { outingPage } from './due/outing-page.ts'
import { finishPage } from './finish-page.ts'
import { foundPage } from './found-page.ts'
import { helpPage } from './help/help-page.ts'
import { jobsPage } from './jobs-page.ts'
import { leavePage } from './leave-page.ts'
import { leftPage } from './left-page.ts'
import { liesPage } from './lies-page.ts'
import { logPage } from './log-page.ts'
import { newJobPage } from './new-job-page.ts'
import { nowPage } from './now-page.ts'
import { offPage } from './off-page.ts'
import { pastePage } from './paste-page.ts'
import { photosPage } from './photos-page.ts'
import { proposalsPage } from './proposals-page.ts'
import { qrPage } from './qr-page.ts'
import { scanPage } from './scan-page.ts'
import type { Hall, Scene } from './scene.ts'
import { stepPage } from './step-page.ts'
import { sumPage } from './sum-page.ts'
import { toldPage } from './told-page.ts'
import { waitPage } from './wait-page.ts'
import { whichPage } from './which-page.ts'

/** What a screen shows while `typed` stands in the line. Without an open job there are only the jobs to choose from. */
export function pageOf(scene: Hall | Scene, screen: Screen, typed: string): Page {
  if (screen.at === 'help') return helpPage(scene, screen, typed)
  if (screen.at === 'new-job') return newJobPage(scene, screen.name)
  if (!('session' in scene) || screen.at === 'jobs') return jobsPage(scene)
  return followsLine(screen) ? listPage(scene, screen, typed) : jobPage(scene, screen)
}

type FollowingScreen = Extract<Screen, { at: 'help' | 'lies' | 'log' }>

/** Whether what a screen shows depends on what stands in the line: no other page is told what does. */
export function followsLine(screen: Screen): screen is FollowingScreen {
  return screen.at === 'help' || screen.at === 'lies' || screen.at === 'log'
}

function listPage(scene: Scene, screen: Exclude<FollowingScreen, { at: 'help' }>, typed: string): Page {
  return screen.at === 'lies'
    ? liesPage(scene, screen.words, typed)
    : logPage(scene, screen.words ?? '', typed)
}

type JobScreen = Exclude<Screen, FollowingScreen | { at: 'jobs' | 'new-job' }>

function jobPage(scene: Scene, screen: JobScreen): Page {
  switch (screen.at) {
    case 'now':
      return nowPage(scene)
    case 'off':
      return offPage(scene)
    case 'back':
      return backPage(scene)
    case 'step':
      return stepPage(scene, screen.step)
    case 'left':
      return leftPage(scene)
    case 'finish':
      return finishPage(scene)
    case 'found':
      return foundPage(scene, screen.found)
    case 'due':
      return duePage(scene)
    case 'judge':
      return judgePage(scene, screen)
    case 'compare':
      return comparePage(scene, screen)
    case 'buy':
      return buyPage(scene)
    case 'arrivals':
      return arrivalsPage(scene)
    case 'order':
      return orderPage(scene, screen.order)
    case 'outing':
      return outingPage(scene, screen.outing)
    case 'scan':
      return scanPage(scene, screen.text)
    case 'qr':
      return qrPage(scene, screen.container, screen.invert)
    case 'count':
      return countPage(scene, screen)
    case 'differences':
      return differencesPage(scene, screen.container)
    case 'proposals':
      return proposalsPage(scene)
    case 'sum':
      return sumPage(scene, screen.sum)
    case 'which':
      return whichPage(scene, screen)
    case 'paste':
      return pastePage(scene, screen.lines)
    case 'photos':
      return photosPage(scene, screen.of)
    case 'draw':
      return drawPage(scene, screen)
    case 'told':
      return toldPage(scene)
    case 'leave':
      return leavePage(scene)
    case 'wait':
      return waitPage(scene, screen)
    default:
      return screen satisfies never
  }
}
