// Photos of the open job: taken or chosen, made small, captioned, tied to a finding or a step.

import { button, make } from "../../module/dom.ts";
import { words } from "../report/evidence.ts";
import { takeAway } from "./entries.ts";
import { count, field, fold, when } from "./form.ts";
import type { Job, Link, Photo } from "./schema.ts";
import { dataAddress, shrink } from "./shrink.ts";
import { freshId } from "./store.ts";
import type { Jobs } from "./store.ts";

export function photos(job: Job, jobs: Jobs, open: Set<string>, names: Map<string, string>): HTMLElement {
  const list = make("ul", { class: "co-job__list co-job__photos" });
  const state = make("p", { class: "co-job__state", role: "status" });
  const d = fold("photos", "Photos", "", open,
    make("p", {}, "Each photo is kept as a small copy, without the place that the camera wrote into it. The original stays where your camera keeps it."),
    list, state, make("p", { class: "co-job__buttons" }, picker("Take a photo", true), picker("Choose photos", false)));
  const note = d.querySelector(".co-job__count");
  list.append(...job.photos.map(row));
  tell();
  return d;

  function tell(): void {
    if (note) note.textContent = count(job.photos.length, "photo", "photos");
  }

  function picker(text: string, camera: boolean): HTMLElement {
    const input = make("input", { class: "co-series__pick", type: "file", accept: "image/*", ...(camera ? { capture: "environment" } : { multiple: "" }) });
    input.dataset.photo = camera ? "camera" : "files";
    input.addEventListener("change", () => void take(input));
    return make("label", { class: "co-button co-button--quiet" }, text, input);
  }

  async function take(input: HTMLInputElement): Promise<void> {
    const files = Array.from(input.files ?? []);
    input.value = "";
    const said: string[] = [];
    let kept = 0;
    for (const file of files) {
      state.textContent = "Making a small copy…";
      try {
        const small = await shrink(file, file.name);
        const photo: Photo = { id: freshId(), caption: "", time: new Date().toISOString(), link: null, type: "image/jpeg", width: small.width, height: small.height, size: small.blob.size };
        job.photos.push(photo);
        await jobs.addPhoto(job.id, photo, small.blob);
        list.append(row(photo));
        kept++;
      } catch (error) {
        said.push(error instanceof Error ? error.message : String(error));
      }
    }
    if (kept > 0) said.unshift(`${count(kept, "photo is", "photos are")} in the job file. Write what ${kept === 1 ? "it shows" : "they show"}.`);
    tell();
    state.textContent = said.join(" ");
    if (kept > 0 && !document.activeElement?.matches(".co-job__box")) list.querySelector<HTMLElement>(`[data-photo-id="${job.photos[job.photos.length - kept]?.id}"] .co-job__box`)?.focus();
  }

  function row(photo: Photo): HTMLElement {
    const img = make("img", { class: "co-job__photo", width: String(photo.width), height: String(photo.height), alt: altOf(photo) });
    void jobs.photo(job.id, photo.id).then(async (blob) => {
      if (blob) img.src = await dataAddress(blob);
      else img.replaceWith(make("p", { class: "co-job__lost" }, "The browser has lost this picture."));
    });
    const change = (act: (p: Photo) => void): void => {
      act(photo);
      void jobs.change(job.id, (kept) => kept.photos.filter((p) => p.id === photo.id).forEach(act));
    };
    const li = make("li", { class: "co-job__entry", "data-photo-id": photo.id }, img,
      field({ name: "caption", label: "What it shows", kind: "text" }, photo.caption, (value) => {
        change((p) => (p.caption = value));
        img.alt = altOf(photo);
      }),
      field({ name: "link", label: "Belongs to", kind: "choice", options: linkOptions(job, photo.link, names) }, photo.link ? `${photo.link.kind} ${photo.link.id}` : "", (value) => {
        const i = value.indexOf(" ");
        const link: Link | null = i < 0 ? null : { kind: value.slice(0, i) as Link["kind"], id: value.slice(i + 1) };
        change((p) => (p.link = link));
      }),
      make("p", { class: "co-job__small" }, `${when(photo.time)}, ${Math.ceil(photo.size / 1000)} KB`));
    const name = photo.caption || `photo of ${when(photo.time)}`;
    const remove = button("Take away", "co-button co-button--quiet", () => takeAway(li, name, () => {
      const at = job.photos.indexOf(photo);
      job.photos.splice(at, 1);
      tell();
      // The picture itself stays until the next visit clears it, so that it can come back.
      void jobs.change(job.id, (kept) => void (kept.photos = kept.photos.filter((p) => p.id !== photo.id)));
      return () => {
        job.photos.splice(Math.min(at, job.photos.length), 0, photo);
        void jobs.change(job.id, (kept) => void kept.photos.splice(Math.min(at, kept.photos.length), 0, photo));
        tell();
        return row(photo);
      };
    }, tell));
    remove.setAttribute("aria-label", `Take away: ${name}`);
    li.append(make("p", { class: "co-job__buttons" }, remove));
    return li;
  }
}

const altOf = (photo: Photo): string => photo.caption || `Photo of ${when(photo.time)}, no caption yet`;

function linkOptions(job: Job, now: Link | null, names: Map<string, string>): [string, string][] {
  const options: [string, string][] = [["", "Nothing in particular"]];
  for (const [id, f] of Object.entries(job.findings)) options.push([`finding ${id}`, `Finding: ${f.text || names.get(id) || words(id)}`]);
  for (const [place, t] of Object.entries(job.ticks)) options.push([`step ${place}`, `Step: ${t.text.slice(0, 70) || words(place.split("#")[1] ?? place)}`]);
  const value = now && `${now.kind} ${now.id}`;
  if (value && !options.some(([v]) => v === value)) options.push([value, now.kind === "step" ? `Step: ${words(now.id.split("#")[1] ?? now.id)}` : `Finding: ${names.get(now.id) || words(now.id)}`]);
  return options;
}
