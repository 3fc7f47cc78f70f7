// What technicians and apprentices type, and where it leads: one of the first three hits matches. A row stands here so that
// no later change of ranking, words or index loses it. Add what somebody searched for in vain.

export const asked = [
  // amounts, as phones and hands write them
  ["3/8 in", /charge#write-to-add/],
  ["1 1/8", /braze-with-nitrogen#wait-first-purge/],
  ['5/8" pipe', /stages\/charge#/],
  ["28 inHg", /water-boiling-point#/],
  ["10 inches of mercury", /recover#step-judge-level/],
  ["500 micorn", /evacuate-and-hold#step-keep-pumping/],
  ["stuck at 1500 micron", /evacuate-and-hold#step-first-pull/],
  ["600 psi nitrogen", /pressure-test#decide-which-test-pressure/],
  ["75 psig", /pressure-test#step-keep-some/],
  ["0.5 ohm", /find-the-cause#step-zero-meter/],
  // refrigerants
  ["R 410 A", /tables\/r-410a$/],
  ["404 a", /tables\/r-404a$/],
  ["hfo 1234yf", /tables\/r-1234yf$/],
  ["r410a 120 psi", /tables\/r-410a$/],
  ["propane tabel", /tables\/r-290$/],
  ["410a pt chart", /tables\/r-410a$/],
  // what somebody sees or hears
  ["compressor wont start", /stages\/find-the-cause$/],
  ["breaker trips", /find-the-cause#decide-does-an-electrical-cause-fit/],
  ["high discharge temp", /find-the-cause#decide-/],
  ["compressor making banging noise", /prove-and-report#decide-must-the-unit-stop-at-once/],
  ["compresor burn out", /(find-the-cause|acid-checks)#decide-/],
  ["milky pump oil", /evacuate-and-hold#step-pump-oil/],
  ["iced up coil", /find-the-cause#decide-/],
  ["delta t", /prove-and-report#step-air-on-off/],
  ["temp diff", /prove-and-report#step-air-on-off/],
  // questions
  ["what if vacuum wont hold", /evacuate-and-hold(#decide-|$)/],
  ["vacum keeps rising", /stages\/evacuate-and-hold/],
  ["how long to wait capacitors", /#wait-link-discharge/],
  ["how long bleed nitrogen before brazing", /braze-with-nitrogen|worksheets\/purge/],
  ["what size recovery cylinder", /worksheets\/recovery-cylinder$/],
  ["how much refrigerant to add", /worksheets\/charge-adjustment$/],
  ["what is subcooling", /glossary#term-subcooling/],
  // the stages, worksheets and pages
  ["loto", /make-safe#step-lock-off/],
  ["brazing rods", /braze-with-nitrogen#decide-which-filler-metal/],
  ["take cores out", /#step-cores-out/],
  ["swap compressor", /stages\/change-compressor$/],
  ["superheat calculator", /worksheets\/(running-state|saturation)$/],
  ["phase imbalance", /worksheets\/supply$/],
  ["leak check interval", /worksheets\/refrigerant-log$/],
  ["offline", /about\/offline$/],
  ["hold failed", /evacuate-and-hold|worksheets\/vacuum-hold$/],
  ["inverter error", /find-the-cause|change-compressor/],
  ["2nd compresor", /find-the-cause|assess|about\/start/],
  ["print report", /(^|\/)report$/],
];
