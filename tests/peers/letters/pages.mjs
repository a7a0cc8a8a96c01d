// The letters' pages by html-validate, and by axe-core in Chromium at the widths of a phone and a desk, light and dark:
// pages.mjs NODE-PREFIX PAGES CHROMIUM. WCAG 2.2 A and AA (contrast 4.5:1 among them).
import { readFileSync, readdirSync } from "node:fs"
import { createRequire } from "node:module"
import { join } from "node:path"
import { pathToFileURL } from "node:url"

const [prefix, folder, chromium] = process.argv.slice(2)
const require = createRequire(join(prefix, "node_modules", "x.js"))
const { HtmlValidate, StaticConfigLoader } = require("html-validate")
const puppeteer = (await import(pathToFileURL(require.resolve("puppeteer-core")).href)).default
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8")
const files = readdirSync(folder).sort().map(name => join(folder, name))
let failed = false
const say = (name, faults, count) => {
  failed ||= faults.length > 0
  console.log(`${faults.length ? "FAIL" : "PASS"} ${name} (${count})`)
  for (const fault of [...new Set(faults)].slice(0, 12)) console.log("   " + fault)
}

const validator = new HtmlValidate(new StaticConfigLoader({ root: true, extends: ["html-validate:standard", "html-validate:a11y", "html-validate:document"] }))
const markup = []
for (const file of files)
  for (const result of (await validator.validateString(readFileSync(file, "utf8").replace(/data:image\/png;base64,[^"]*/g, "night.png"))).results)
    for (const message of result.messages) markup.push(`${message.ruleId}: ${message.message}`)
say("html-validate: standard, a11y, document", markup, files.length)

const browser = await puppeteer.launch({
  executablePath: chromium,
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
})
try {
  // One letter of each kind of beginning says as much as all of them.
  const kinds = new Map()
  for (const file of files) kinds.set(/<title>(\S+ ?[A-Za-z]*)/.exec(readFileSync(file, "utf8"))?.[1].replace(/ (Mon|Tue|Wed|Thu|Fri|Sat|Sun)$/, ""), file)
  console.log(`looked at: ${[...kinds.keys()].join("; ")}`)
  const page = await browser.newPage()
  for (const width of [360, 1200])
    for (const scheme of ["light", "dark"]) {
      const faults = []
      await page.setViewport({ width, height: 800 })
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }])
      for (const [kind, file] of kinds) {
        await page.goto(pathToFileURL(file).href)
        await page.evaluate(axe)
        const { violations } = await page.evaluate(() => axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }))
        for (const rule of violations) faults.push(`${kind}: ${rule.id}: ${rule.nodes[0].html.slice(0, 100)} ${rule.nodes[0].failureSummary.split("\n")[1] ?? ""}`)
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
        if (over > 0) faults.push(`${kind}: ${over} px wider than the window`)
      }
      say(`axe-core and no sideways scrolling at ${width} px, ${scheme}`, faults, kinds.size)
    }
} finally {
  await browser.close()
}
process.exit(failed ? 1 : 0)
