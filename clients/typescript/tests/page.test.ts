// The sample page in headless Chromium, against the live service, and the spec sheet as a page of its own.

import assert from "node:assert/strict";
import { after, test } from "node:test";

import { HtmlValidate } from "html-validate";
import type { Page } from "playwright-core";

import { Client } from "../src/index.js";
import type { SpecSheetQuestion } from "../src/index.js";
import { barriers, browser, site } from "./browser.js";
import { liveService, textOf } from "./checkout.js";

const shop = await site();
const service = await liveService({ SCALEWRIGHT_CORS_ORIGINS: shop.origin });
const chromium = await browser();
const client = new Client(service.address);

shop.ask(service.address);
after(async () => {
  await chromium.close();
  shop.stop();
  await service.stop();
});

/** Widths of a phone, a tablet and a desktop. [px] */
const WIDTHS = [360, 800, 1280];

/** How long a page may take over one thing, on a busy machine. [ms] */
const PATIENCE = 10_000;

const SCHEMES = ["light", "dark"] as const;

/** The sample page with all that it loads at first. Anything that goes wrong in it fails the test. */
async function opened(options: { width?: number; scheme?: "light" | "dark" } = {}): Promise<Page> {
  const { width = 1280, scheme = "light" } = options;
  const page = await chromium.newPage({ viewport: { width, height: 900 }, colorScheme: scheme });
  page.setDefaultTimeout(PATIENCE);
  page.on("pageerror", (error) => assert.fail(error));
  page.on("request", (request) => {
    assert.ok([shop.origin, service.address, "null"].includes(new URL(request.url()).origin), request.url());
  });
  page.on("response", (response) => assert.ok(response.status() < 500, `${response.url()}: ${response.status()}`));
  await page.goto(`${shop.origin}/sample/`);
  await page.locator("#table table").waitFor();
  await page.locator("#sheet-host article").waitFor();
  return page;
}

/** The question that the service's own example of a spec sheet asks. */
async function exampleSheet(): Promise<SpecSheetQuestion> {
  return JSON.parse(await textOf("openapi_examples/spec-sheet/rule-of-18-board.request.json")) as SpecSheetQuestion;
}

/** A fan board with all that its sheet may show: two columns of frets for each side, and the board drawn. */
const FAN: SpecSheetQuestion = {
  part: {
    id: "FAN-7",
    kind: "board",
    true_scale: { bass: "27 in", treble: "25.5 in" },
    rule: "equal",
    frets: 24,
    square_fret: 7,
    tolerance: "0.2 mm",
  },
  outline: { strings: 7, widths: { nut: 48, last_fret: 66 }, margins: 3.5 },
  title: "Fan board, invented for this test",
  revision: "1",
  date: "2026-11-25",
};

/** Spec sheets that are looked at, by what their boards are. */
const SHEETS = { plain: await exampleSheet(), fan: FAN };

/** What html-validate finds against a text, by its recommended rules. What comes from here needs no checksum. */
async function mistakes(html: string, kind: "page" | "fragment"): Promise<string[]> {
  const validator = new HtmlValidate({
    extends: ["html-validate:recommended", ...(kind === "page" ? ["html-validate:document"] : [])],
    rules: { "require-sri": ["error", { target: "crossorigin" }] },
  });
  const report = await validator.validateString(html);
  return report.results.flatMap((result) =>
    result.messages.map(({ ruleId, line, message }) => `${ruleId}, line ${line}: ${message}`),
  );
}

test("A visitor picks a scale and sees where the frets go", async () => {
  const page = await opened();

  // 24.75 in is 628.65 mm; by the rule of 18 fret 1 stands at an eighteenth of it.
  assert.equal(await page.locator("#table tbody tr:first-child td").first().textContent(), (628.65 / 18).toFixed(2));
  assert.match((await page.locator("#layout-said").textContent()) ?? "", /^The true scale is 624\.08 mm\./);

  await page.getByRole("combobox", { name: "Scale" }).fill("650 mm");
  await page.getByLabel("Spacing rule").selectOption({ label: "Twelve equal steps" });
  await page.getByRole("button", { name: "Show the frets" }).click();
  await page.getByText("The true scale is 650.00 mm. Fret 12 stands 325.00 mm from the nut.").waitFor();

  const image = page.getByRole("img", { name: "The board from above, with 20 frets." });
  assert.ok(await image.evaluate((element) => (element as HTMLImageElement).decode().then(() => true)));
  await page.close();
});

test("A refusal stands beside its field with what would work there, and goes when it is mended", async () => {
  const page = await opened();
  const scale = page.getByRole("combobox", { name: "Scale" });

  await scale.fill("25 furlongs");
  await page.getByLabel("Frets", { exact: true }).fill("0");
  await scale.press("Enter");
  await page.locator("#scale[aria-invalid=true]").waitFor();

  assert.match(
    (await page.locator("#scale-fault").textContent()) ?? "",
    /a unit was expected.*For example: 24 3\/4 in/,
  );
  assert.notEqual(await page.locator("#frets-fault").textContent(), "");
  assert.ok(await scale.evaluate((element) => element === document.activeElement));
  assert.equal(await page.locator("#layout-found").isVisible(), false);
  assert.deepEqual(await barriers(page), []);

  await scale.fill("25 in");
  await page.getByLabel("Frets", { exact: true }).fill("12");
  await scale.press("Enter");
  await page.locator("#table table").waitFor();
  assert.equal(await page.locator("[aria-invalid]").count(), 0);
  assert.equal(await page.locator("#scale-fault").textContent(), "");
  await page.close();
});

test("Two parts are compared in words", async () => {
  const page = await opened();
  const verdict = page.locator("#compare-found");
  const compare = page.getByRole("button", { name: "Compare" });

  await compare.click();
  await page.locator("[data-decision=apart]").waitFor();
  assert.match((await verdict.textContent()) ?? "", /^They do not belong together\.NL-22 and NL-B1 .* 4\.57/);

  await page.getByLabel("Second part").selectOption({ label: "Bridge NL-B2, placed for 624 mm" });
  await compare.click();
  await page.locator("[data-decision=together]").waitFor();
  await page.close();
});

test("A visitor's own board is read, and a reading that is none is refused at its field", async () => {
  const page = await opened();
  await page.getByLabel("First part").selectOption({ label: "Your own board" });
  const reading = page.getByLabel("Your board, nut to fret 12");

  await reading.fill("a foot");
  await reading.press("Enter");
  await page.locator("#twelfth[aria-invalid=true]").waitFor();
  assert.notEqual(await page.locator("#twelfth-fault").textContent(), "");

  await reading.fill("312.1 mm");
  await reading.press("Enter");
  await page.locator("#compare-found[data-decision]").waitFor();
  assert.equal(await page.locator("#twelfth[aria-invalid]").count(), 0);
  await page.close();
});

test("The embedded spec sheet takes on the looks of the shop", async () => {
  const page = await opened();
  const [sheet, shops] = await page.evaluate(() => {
    const ground = (selector: string): string =>
      getComputedStyle(document.querySelector(selector) as Element).backgroundColor;
    return [ground(".scalewright-sheet"), ground("#sheet")];
  });

  assert.equal(sheet, shops);
  assert.match((await page.locator("#sheet-host .large").textContent()) ?? "", /^624\.08/);
  await page.close();
});

test("Everything can be done with the keyboard, in the order of the page", async () => {
  const page = await opened();
  const stops: (string | null)[] = [];
  for (let presses = 0; presses < 15; presses += 1) {
    await page.keyboard.press("Tab");
    stops.push(
      await page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent?.trim() || null),
    );
  }

  const order = [
    "Skip to the product",
    "Pick a scale",
    "scale",
    "rule",
    "frets",
    "unit",
    "Show the frets",
    "drawing",
    "table",
  ];
  assert.deepEqual(
    stops.filter((stop) => order.includes(stop ?? "")),
    order,
  );
  await page.close();
});

test("Where the service is away, the page says so and stays", async () => {
  const page = await chromium.newPage();
  await page.route(`${service.address}/**`, (route) => route.abort());
  await page.goto(`${shop.origin}/sample/`);

  await page.locator("#layout-form .general", { hasText: "does not answer" }).waitFor();
  await page.locator("#sheet-said", { hasText: "does not answer" }).waitFor();
  await page.close();
});

for (const scheme of SCHEMES) {
  for (const width of WIDTHS) {
    test(`At ${width} px and ${scheme} the page has no barriers and does not spill`, async () => {
      const page = await opened({ width, scheme });
      await page.getByRole("button", { name: "Compare" }).click();
      await page.locator("[data-decision]").waitFor();

      assert.deepEqual(await barriers(page), []);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
      await page.close();
    });

    for (const [name, question] of Object.entries(SHEETS)) {
      test(`At ${width} px and ${scheme} the sheet of a ${name} board has no barriers and does not spill`, async () => {
        const page = await chromium.newPage({ viewport: { width, height: 900 }, colorScheme: scheme });
        await page.setContent(await client.specSheetDrawing(question));

        assert.deepEqual(await barriers(page), []);
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
        await page.close();
      });
    }
  }
}

test("The sample page is HTML by the standard", async () => {
  assert.deepEqual(await mistakes(await textOf("clients/typescript/sample/index.html"), "page"), []);
});

for (const [name, question] of Object.entries(SHEETS)) {
  test(`The spec sheet of a ${name} board is HTML by the standard, as a page and as a fragment`, async () => {
    assert.deepEqual(await mistakes(await client.specSheetDrawing(question), "page"), []);
    assert.deepEqual(await mistakes(await client.specSheetDrawing({ ...question, html: "fragment" }), "fragment"), []);
  });
}

test("In a browser a batch goes out whole and its answers come in order", async () => {
  const page = await opened();
  const told = await page.evaluate(
    async ([library, address]) => {
      const { Client: Asking } = (await import(library as string)) as typeof import("../src/index.js");
      async function* stock(): AsyncGenerator<{ id: string; scale: string; rule: "equal"; frets: number }> {
        yield { id: "A", scale: "650 mm", rule: "equal", frets: 12 };
        yield { id: "B", scale: "7 furlongs", rule: "equal", frets: 12 };
      }
      const batch = new Asking(address).layoutBatch(stock());
      const lines: string[] = [];
      for await (const outcome of batch) {
        lines.push(
          `${String(outcome.id)} ${outcome.kind === "result" ? outcome.result.true_scale : outcome.error.name}`,
        );
      }
      return [...lines, batch.summary?.complete];
    },
    [`${shop.origin}/dist/src/index.js`, service.address],
  );

  assert.deepEqual(told, ["A 650", "B InvalidRequestError", true]);
  await page.close();
});
