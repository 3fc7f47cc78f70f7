import { mkdtemp, rm } from "node:fs/promises";
import path from "node:path";
import { serve, folder } from "./support/handbook.mjs";
import { launch } from "./support/puppeteer.mjs";
import { openPage, saved } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { readFileSync } from "node:fs";
const profile = await mkdtemp(path.join(folder(), "profile-"));
const server = await serve(); const place = server.place;
const p = await launch("chromium", { profile });
await openPage(p, place, "index"); await saved(p);
const sheet = new Sheet(p, place, "saturation"); await sheet.open();
await sheet.enterAll({ refrigerant: "R-448A", pressure: ["9.4", "barg"], "line-temperature": ["17", "C"] }); await sheet.waitForAnswer();
await new Promise(r=>setTimeout(r,500)); await p.close(); await server.stop();
for (let i=0;i<Number(process.env.N??1);i++) {
  const q = await launch("chromium", { profile });
  const s = await q.tab.createCDPSession();
  await q.tab.evaluateOnNewDocument(() => {
    new MutationObserver((_, o) => { if (document.querySelector("[data-answer] .co-answer__title")) { o.disconnect(); window.__in = performance.now(); requestAnimationFrame(() => setTimeout(() => { window.__answered = performance.now(); })); } }).observe(document, { subtree: true, childList: true });
  });
  await s.send("Emulation.setCPUThrottlingRate", { rate: Number(process.env.RATE ?? 4) });
  await q.tab.tracing.start({ path: "/tmp/lead/trace-cold.json", categories: ["blink.user_timing","devtools.timeline","v8","disabled-by-default-devtools.timeline","disabled-by-default-devtools.timeline.stack","toplevel","blink","cc","navigation","ServiceWorker"] });
  await q.goto(place.url("worksheets/saturation"));
  await q.until("answer", () => window.__answered ?? 0);
  await new Promise(r=>setTimeout(r,300));
  console.log("answered", await q.run(() => window.__answered));
  await q.tab.tracing.stop();
  await q.close();
  const { traceEvents } = JSON.parse(readFileSync("/tmp/lead/trace-cold.json"));
  for (const m of traceEvents.filter(e=>e.name==="thread_name"&&e.args.name==="CrRendererMain")) {
    const ev = traceEvents.filter(e=>e.pid===m.pid&&e.tid===m.tid&&e.ph==="X").sort((a,b)=>a.ts-b.ts||b.dur-a.dur);
    const marks = traceEvents.filter(e=>e.pid===m.pid&&/navigationStart|ANSWER|domContentLoadedEventEnd|firstContentfulPaint/.test(e.name));
    const nav = marks.filter(e=>e.name==="navigationStart"&&e.args?.data?.documentLoaderURL?.includes("saturation")).at(-1); if(!nav) continue;
    const t0=nav.ts; console.log(marks.map(e=>[e.name,((e.ts-t0)/1000).toFixed(0)]).join(" | "));
    for (const l of ev.filter(e=>e.name==="RunTask"&&e.dur>8000&&e.ts>t0-200000)) {
      const sum=new Map(); const inside=ev.filter(e=>e.ts>=l.ts&&e.ts+e.dur<=l.ts+l.dur); const stack=[];
      for(const e of inside){ while(stack.length&&stack.at(-1).ts+stack.at(-1).dur<=e.ts) stack.pop(); const par=stack.at(-1); e.par=par; e.key=e.name+(e.args?.data?.url?(" "+String(e.args.data.url).split("/").pop().slice(0,20)):"")+(e.args?.data?.functionName?" "+e.args.data.functionName:"")+(e.args?.data?.type?" "+e.args.data.type:""); const d=e.dur||0; sum.set(e.key,(sum.get(e.key)??0)+d); if(par) sum.set(par.key,(sum.get(par.key)??0)-d); stack.push(e);}
      for (const e of inside) if (/^(Layout|UpdateLayoutTree)$/.test(e.name) && e.dur > 8000) { const ch=[]; for(let q=e.par;q;q=q.par) ch.push(q.key); console.log("      **", e.name, (e.dur/1000).toFixed(0), JSON.stringify(e.args.beginData?.stackTrace?.map(f=>f.functionName+":"+f.columnNumber) ?? 0).slice(0,160), ch.slice(0,4).join(" < ")); }
      console.log(`at ${((l.ts-t0)/1000).toFixed(0)} wall ${(l.dur/1000).toFixed(0)} cpu ${(l.tdur/1000).toFixed(0)}: `+[...sum].sort((a,b)=>b[1]-a[1]).slice(0,7).filter(([k,v])=>v>2000).map(([k,v])=>`${k} ${(v/1000).toFixed(0)}`).join("; "));
    }
  }
}
await rm(profile, { recursive: true, force: true });
