// Time per site-night of two JavaScript libraries on one core, and the accuracy of our events by the first one's altitudes.
//   node peers.mjs MODULES_FOLDER speed
//   node peers.mjs MODULES_FOLDER altitudes REQUESTS.jsonl ANSWERS.jsonl
import { createRequire } from 'node:module'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'

const [modules, mode, requestsFile, answersFile] = process.argv.slice(2)
const require = createRequire(join(modules, 'index.js'))
const Astronomy = require('astronomy-engine')
const SunCalc = await import(require.resolve('suncalc')).then(m => m.default ?? m)

// The same scale as ours: TT - UT is 69.184 s, not the library's prediction.
Astronomy.SetDeltaTFunction(() => 69.184)
const noon = (night, lon) => new Date(Date.parse(night + 'T12:00:00Z') - Math.round(lon / 15) * 3600e3)

function within (search, from, to) {
  const found = []
  for (let at = from; ;) {
    const event = search(at, (to - at.date) / 86400e3)
    if (!event || event.date >= to) return found
    found.push(event)
    at = event.AddDays(1e-3)
  }
}

// What the sky command tells: the same events and windows.
function siteNight (lat, lon, height, night) {
  const observer = new Astronomy.Observer(lat, lon, height)
  const start = noon(night, lon)
  const end = new Date(+start + 86400e3)
  const from = Astronomy.MakeTime(start)
  const { Sun, Moon, Star1 } = Astronomy.Body
  for (const direction of [1, -1]) {
    within((at, days) => Astronomy.SearchRiseSet(Sun, observer, direction, at, days), from, end)
    within((at, days) => Astronomy.SearchRiseSet(Moon, observer, direction, at, days), from, end)
    for (const level of [-6, -12, -18]) within((at, days) => Astronomy.SearchAltitude(Sun, observer, direction, at, days, level), from, end)
    for (const level of [0, 10]) within((at, days) => Astronomy.SearchAltitude(Star1, observer, direction, at, days, level), from, end)
  }
  Astronomy.SearchHourAngle(Star1, observer, 0, from)
  const midnight = Astronomy.SearchHourAngle(Sun, observer, 12, from)
  Astronomy.Illumination(Moon, midnight.time)
  const equator = Astronomy.Equator(Moon, midnight.time, observer, true, true)
  return Astronomy.Horizon(midnight.time, observer, equator.ra, equator.dec).altitude
}

function sunCalcNight (lat, lon, height, night) {
  const start = noon(night, lon)
  const end = new Date(+start + 86400e3)
  const times = [start, end].map(day => [SunCalc.getTimes(day, lat, lon, height), SunCalc.getMoonTimes(day, lat, lon)])
  SunCalc.getMoonIllumination(start)
  return times
}

function microseconds (work, count) {
  let seed = 7
  const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647
  const cases = Array.from({ length: count }, () => [random() * 130 - 65, random() * 360 - 180, random() * 3000,
    new Date(Date.UTC(2000, 0, 1) + Math.floor(random() * 18262) * 86400e3).toISOString().slice(0, 10)])
  for (const c of cases.slice(0, count / 10)) work(...c)
  const before = process.cpuUsage()
  for (const c of cases) work(...c)
  const used = process.cpuUsage(before)
  return (used.user + used.system) / count
}

// Degrees above the level of each of our events, by the library's own places without refraction.
function altitudes () {
  const lines = file => readFileSync(file, 'utf8').trim().split('\n').map(line => JSON.parse(line))
  const requests = lines(requestsFile)
  const errors = { sun: [], moon: [], subject: [] }
  lines(answersFile).forEach((answer, i) => {
    const { lat, lon, elevation, minAltitude } = requests[i]
    const observer = new Astronomy.Observer(lat, lon, elevation)
    const add = (kind, body, level, time, limb) => {
      const height = t => {
        const place = Astronomy.Equator(body, t, observer, true, true)
        const extra = limb ? 34 / 60 + Math.asin(1737.4 / (place.dist * Astronomy.KM_PER_AU)) * Astronomy.RAD2DEG : 0
        return (Astronomy.Horizon(t, observer, place.ra, place.dec).altitude + extra - level) * 3600
      }
      const at = Astronomy.MakeTime(new Date(time))
      const rate = Math.abs(height(at.AddDays(1 / 86400)) - height(at))
      errors[kind].push([Math.abs(height(at)), rate])
    }
    const s = answer.sun
    for (const [level, names] of [[-50 / 60, ['set', 'rise']], [-6, ['civilDusk', 'civilDawn']], [-12, ['nauticalDusk', 'nauticalDawn']],
      [-18, ['astronomicalDusk', 'astronomicalDawn']]]) {
      for (const name of names) if (s[name]) add('sun', Astronomy.Body.Sun, level, s[name])
    }
    for (const time of [...answer.moon.rises, ...answer.moon.sets]) add('moon', Astronomy.Body.Moon, 0, time, true)
    Astronomy.DefineStar(Astronomy.Body.Star1, (requests[i].ra ?? 266.4168166666667) / 15, requests[i].dec ?? -29.007825, 1e6)
    for (const w of answer.subjectWindows) {
      for (const time of [w.start, w.end]) {
        if (time !== answer.span.start && time !== answer.span.end) add('subject', Astronomy.Body.Star1, minAltitude, time)
      }
    }
  })
  for (const [kind, all] of Object.entries(errors)) {
    const arcsec = all.map(e => e[0])
    const seconds = all.filter(e => e[1] >= 1).map(e => e[0] / e[1])
    const rms = list => Math.sqrt(list.reduce((sum, e) => sum + e * e, 0) / list.length)
    console.log(`${kind.padEnd(8)} ${String(all.length).padStart(6)} events: max ${Math.max(...arcsec).toFixed(2)}" rms ${rms(arcsec).toFixed(2)}"` +
      `; in time max ${Math.max(...seconds).toFixed(3)} s rms ${rms(seconds).toFixed(3)} s`)
  }
}

if (mode === 'speed') {
  Astronomy.DefineStar(Astronomy.Body.Star1, 17.76112, -29.00783, 1e6)
  console.log(JSON.stringify({ astronomyEngine: microseconds(siteNight, 1000), sunCalc: microseconds(sunCalcNight, 20000) }))
} else {
  altitudes()
}
