// Finding and making elements.

/** The element with an id, which the page is known to have. */
export function found<E extends HTMLElement>(id: string, kind: new () => E): E {
  const element = document.getElementById(id);
  if (!(element instanceof kind)) {
    throw new TypeError(`the page has no ${kind.name} #${id}`);
  }
  return element;
}

/** A new element with what is in it. */
export function made<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string>>,
  ...content: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    element.setAttribute(name, value);
  }
  element.append(...content);
  return element;
}

/** Answers a form without leaving the page; a newer question gives up the one before. */
export function onSubmit(form: HTMLFormElement, answer: (given: FormData, signal: AbortSignal) => Promise<void>): void {
  let asking = new AbortController();
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    asking.abort();
    asking = new AbortController();
    void unlessGivenUp(answer(new FormData(form), asking.signal), asking.signal);
  });
}

async function unlessGivenUp(work: Promise<void>, signal: AbortSignal): Promise<void> {
  try {
    await work;
  } catch (error) {
    if (!signal.aborted) {
      throw error;
    }
  }
}
