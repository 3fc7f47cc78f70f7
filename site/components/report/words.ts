// Every phrase of the report and of the customer page that is ours. A company that says things in another way changes
// them here and builds again; the tests of this folder hold three rules over them: no word lays blame on anyone, none
// promises energy, and the customer page reads at the age of 12. {n} and the like are filled in.

import type { Standing } from "./assessment.ts";

export const demo = "Invented demonstration";
export const demoLong = "Invented demonstration. No such site, unit or failure exists.";

export const report = {
  kind: "Root-cause report",
  untitled: "Job without a name",
  sections: {
    summary: "Summary",
    history: "Failure history",
    evidence: "Evidence",
    chain: "From cause to failed part",
    excluded: "Causes that findings speak against, and causes still open",
    work: "Work done, and readings after it",
    refrigerant: "Refrigerant log",
    risk: "Risk that remains",
    options: "Three options",
    decision: "Decision of the owner",
    limits: "Limits of this investigation",
  },
  none: "Not recorded.",
  noInstrument: "not recorded",
  noUnit: "no unit recorded",
  about: { site: "Site", unit: "Unit", refrigerant: "Refrigerant", nameplate: "Factory charge", job: "Job", made: "Made", by: "By" },

  summary: {
    failed: "What failed",
    why: "Why",
    stops: "What will stop it",
    risk: "If only the part is replaced",
    price: "Price",
    answer: "Answer wanted by",
    openPrice: "to be filled in",
    stopsMaybe: "Once a test has shown it:",
    stopsUnknown: "First find the cause. The checks to make stand in section {n}.",
  },

  // What may be said. Two independent facts for “cause”, one for “probable”; the standing comes from the assessment.
  says: {
    nothing: "Not determined. No findings have been entered.",
    notWeighed: "Not determined. The findings were not weighed.",
    contradiction: "Not determined. The findings contradict each other.",
    undetermined: "Not determined. The evidence does not carry a cause.",
    possible: "Not determined. Possible, but not shown: {causes}.",
    cause: "The cause is: {causes}.",
    causes: "The causes are: {causes}.",
    probable: "The probable cause is: {causes}.",
    probables: "The probable causes are: {causes}.",
    beside: "Probable beside it: {causes}.",
    against: "Evidence {numbers} speaks against it, so it is called probable. Test the contradiction.",
    conflict: "Evidence {numbers} does not fit the other findings. Look at it again.",
    evidence: "evidence {numbers}",
  },
  standing: { cause: "Cause", probable: "Probable", possible: "Possible", excluded: "Findings speak against it", "not determined": "Not determined" } satisfies Record<Standing, string>,

  history: {
    rule: "Dates and facts as they were told or found.",
    date: "Date", what: "What happened", told: "Told by or to",
    none: "The failure history of this job lists none.",
    found: "The findings of the assessment say:",
  },

  evidence: {
    rule: "Each number in this report points to one piece of evidence here.",
    found: "Found",
    notFound: "Looked for and not found",
    readings: "Readings",
    answers: "Worked out from readings",
    photos: "Other photos",
    written: "Written down by the technician",
    writtenRule: "As typed. These words were not weighed.",
    number: "No.", what: "What", reading: "Reading", time: "Time", instrument: "Instrument", where: "Where",
    noTime: "no time recorded",
    noCaption: "No caption",
    lostPicture: "The picture is not kept on this phone.",
    from: "From",
    none: "Nothing has been recorded.",
  },

  chain: {
    legend: "A full line has evidence at both ends; at the failed compressor the failure itself counts. A dashed line with a question mark is not proven. Numbers are evidence numbers.",
    none: "No chain is drawn. No cause stands on evidence yet.",
    part: "failed compressor",
    proven: "Supported by evidence {numbers}.",
    open: "Not proven. Evidence so far: {numbers}.",
    openNone: "Not proven. No evidence yet.",
    means: "How it damages the part",
  },

  excluded: {
    excluded: "Findings speak against these",
    rule: "With the findings beside it, each of these is improbable. A finding is not always a measurement; each says what it is.",
    cause: "Cause", standing: "Standing", test: "By evidence", by: "What speaks against it", missing: "A check that would tell",
    none: "No cause is improbable by the findings.",
    open: "Judged by the evidence",
    rest: "The findings do not tell: {causes}.",
    next: "Checks worth making next",
    for: "for: {numbers}", against: "against: {numbers}",
    notFound: "looked for, and not found: {finding}",
    typed: "Excluded, as the technician wrote it",
  },

  work: {
    done: "Work done",
    steps: "Steps ticked in the handbook",
    stage: "Procedure", count: "Steps", when: "When",
    readings: "Readings after the work",
    answers: "Tests after the work",
    photos: "Photos of the work",
    none: "No work has been recorded.",
    noReadings: "No reading after the work has been recorded.",
    chart: "Drawn again from the kept readings.",
    differs: "Worked out again, the answer is now {answer}. The kept one stands above.",
    input: "Entered",
    inFile: "in full in the job file",
    replaced: "Replaced by {n}, the later answer to the same log.",
  },

  refrigerant: {
    date: "Date", direction: "Direction", mass: "Mass", kind: "Refrigerant", cylinder: "Cylinder", note: "Note",
    in: "In", out: "Out",
    balance: "Balance", sumIn: "In", sumOut: "Out", difference: "In less out",
    unread: "{n} without a mass that can be read; they are not in the sum.",
    none: "No refrigerant movement has been recorded.",
    nameplate: "Factory charge on the nameplate: {mass}.",
  },

  risk: {
    recurs: "{cause} would act on the next compressor too.",
    mayRecur: "{cause} is only probable. If it is the cause, it would act on the next compressor too.",
    passes: "{cause} is not expected to act again by itself.",
    gate: "Before the compressor may start, each of these must be removed or tested:",
    unknown: "The cause is not determined, so it can act again. No risk can be put into a number.",
    none: "What was found has been listed. Wear inside parts that were not opened stays unknown.",
    cost: "Cost of doing nothing",
    typed: "Added by the technician",
  },

  options: {
    recommended: "Recommended",
    byEvidence: "The recommendation follows the evidence.",
    byPerson: "The recommendation is the technician’s choice.",
    names: { a: "Replace the part only", b: "Remove the cause", c: "Remove the cause and watch it" },
    rows: { work: "Work", left: "Risk left", duties: "Owner’s part", measure: "Success is measured by", price: "Price", date: "Done by" },
    a: {
      work: "What was done or is agreed today: the failed part, clean-up, test and charge.",
      left: "The cause still works. The next part can fail in the same way.",
      leftMaybe: "The probable cause may still work. The next part can fail in the same way.",
      leftUnknown: "The cause is not known. The next part can fail in the same way.",
      leftPasses: "The cause named is not expected to act on the next part by itself. Wear elsewhere remains.",
      leftSound: "The compressor is sound by the evidence. A new one does not remove what stopped the system.",
      leftMaybeSound: "The compressor is probably sound. If it is, a new one does not remove what stopped the system.",
      measure: "Readings of the start, inside the maker’s limits.",
    },
    b: {
      work: "Option A, and:",
      workMaybe: "Once a test has shown the probable cause:",
      workUnknown: "Option A, and the checks that are missing, then the removal of what they show.",
      left: "The cause named is gone. Wear that it left behind remains.",
      leftMaybe: "If a test showed the probable cause, it is gone. Wear that it left behind remains.",
      leftUnknown: "Less than with A, once the checks have shown the cause.",
      measure: "The readings that showed the cause, taken again in the same place with the same instrument.",
    },
    c: {
      work: "Option B, and return visits on the dates below, with a record of each reading.",
      left: "As B. A change is seen early.",
      measure: "The same readings at each visit, compared with those of the start.",
    },
    duties: {
      a: ["Keep the power on, so that the crankcase heater stays warm."],
      b: ["Give access to all units.", "Change or clean filters at the agreed interval.", "Keep grilles and coils clear."],
      c: ["Name one person who calls when an alarm shows.", "Keep the record of visits."],
    },
    asA: "As A.", asB: "As B.",
    followUp: "Return visits",
    visits: [
      { key: "24h", when: "After 24 h", what: "Running readings, acid and oil, leak check" },
      { key: "100h", when: "After about 100 running hours", what: "Acid and oil" },
      { key: "month", when: "After one month", what: "All readings against those of the start, airflow, filters" },
      { key: "90d", when: "After 90 days", what: "Oil sample to a laboratory, leak check" },
      { key: "year", when: "After 12 months", what: "Oil sample to a laboratory, leak check" },
    ],
    visit: "Visit", check: "Check", date: "Date", name: "Who", asCommon: "The visits follow common practice. The maker’s manual and local codes come first.",
  },

  // How the removal of a cause is measured; a cause that is not here is measured by the sentence of option B.
  measures: {
    contamination: "Two acid tests without acid, a day or more apart.",
    airflow: "Airflow of each running indoor unit as a share of its rated airflow, before and after.",
    undercharge: "Standing pressure test and vacuum hold, then the charge by weight.",
    "oil-trapped": "Oil level and oil alarms over the return visits.",
    "air-moisture": "Vacuum hold, then standing pressure against saturation.",
    "outdoor-coil": "Condensing temperature less outdoor air, before and after.",
    valve: "Coil temperature while the valve is stepped from closed to open.",
    sensor: "Sensor against a probe on the same pipe.",
    overcharge: "Charge by weight, then subcooling.",
    heater: "Current of the heater, and sump temperature before a start.",
    restriction: "Temperature across the part, before and after.",
    supply: "Voltage of each phase under load.",
    "low-load": "Starts in an hour, from the memory.",
  } as Record<string, string>,

  decision: {
    read: "The person who signs has read section {n}, the risk that remains.",
    accept: "Accepted: option",
    refuse: "Refused: none of the options.",
    refused: "I was told of the risk that remains. I do not want the work now.",
    owner: "For the owner", company: "For the company", name: "Name", date: "Place and date", sign: "Signature",
    typed: "Decision recorded",
  },

  limits: [
    "The words follow the evidence entered. Two independent facts are called a cause, one a probable cause. With less, the cause is not determined.",
    "The weights of the findings are editorial. They guide the words; the person who signs judges.",
    "Failure history gives dates and facts. Nothing is said about the work of any person or company.",
    "No saving of energy is promised. Only a measurement before and after could show one.",
    "Parts that were not opened, and units that were not running, were not judged.",
    "Local codes, the maker’s manual and licensed practice come before this report.",
  ],
  limitsCounted: {
    notLooked: "{n} of {all} checks of the assessment were not made.",
    noInstrument: "Readings without a recorded instrument: {n}.",
    noUnit: "Readings without a unit: {n}.",
    noPicture: "Photos whose picture is not kept on this phone: {n}.",
    notWeighed: "The findings of this job were not weighed when the report was made.",
    typed: "Could not be measured",
    clock: "Times follow the clock of the phone, {clock}.",
    made: "Made with version {version} of the handbook on {date}.",
  },
} as const;

/** The page for the owner: short sentences, plain words. */
export const customer = {
  title: "Your cooling system: what we found",
  failed: "What broke",
  why: "Why it broke",
  again: "What can happen next",
  choices: "Your three choices",
  part: "What we ask of you",
  back: "When we come back",
  sign: "Your answer",
  cause: "We found the cause. {cause}",
  causes: "We found more than one cause.",
  probable: "We think we know the cause, but one more test is needed. {cause}",
  unknown: "We do not know the cause yet. We will not guess. More tests are needed.",
  maybe: "It may be this: {cause}.", // a cause without words of its own below
  facts: "The full report lists {n} findings behind this. Each one has a number.",
  fact: "The full report lists one finding behind this.",
  recurs: "If this stays as it is, the new part can break in the same way.",
  mayRecur: "If this was the cause and it stays, the new part can break too.",
  passes: "We do not think this will come back on its own.",
  unknownNext: "The cause may still be there. Then the new part can break in the same way.",
  a: { name: "Change the broken part only.", says: "The system runs again. The cause stays." },
  aUnknown: "The system runs again. We do not know if the cause is gone.",
  aMaybe: "The system runs again. The cause may stay.",
  aSound: "The part is not broken. A new one would not help.",
  aMaybeSound: "We think the part is not broken. Then a new one would not help.",
  aPasses: "The system runs again. We do not think the cause will come back.",
  b: { name: "Change the part and remove the cause.", says: "We do this as well:", maybe: "First we test for what we think it was. If the test shows it, we do this:", unknown: "We run the tests that are still open. Then we fix what they show." },
  c: { name: "Remove the cause and keep watch.", says: "We do all of the above. Then we come back and test it." },
  best: "We advise this one.",
  duties: ["Leave the power on, day and night. It keeps the oil warm.", "Let us get to all the units.", "Keep filters clean and vents free.", "Call us when an alarm shows. Do not just reset it."],
  visits: { "24h": "After one day", "100h": "After about 100 hours of use", month: "After one month", "90d": "After three months", year: "After one year" } as Record<string, string>,
  price: "Price",
  noPrice: "We will tell you the price.",
  noDate: "We will agree on a date.",
  yes: "Yes, I want choice",
  no: "No, I want none of them now. I was told what can happen.",
  name: "Name", date: "Date", signature: "Sign here",
  noEnergy: "We do not promise a lower power bill. We did not test for that.",
  full: "The full report comes with this page. It shows each fact, each photo and each test.",
  // By cause of the assessment: what it was, what takes it away, and what it may have been while it is only probable. One
  // that is not here is named as in the full report.
  plain: {
    contamination: ["Dirt and acid from the last time were still in the pipes.", "We clean the pipes and change the oil.", "Dirt and acid from the last time may still have been in the pipes."],
    airflow: ["Too little air went through the indoor units.", "We clean the filters, coils and fans, and then test the air.", "Too little air may have gone through the indoor units."],
    undercharge: ["There was too little cooling gas in the system. It leaked out.", "We find the leak, mend it and fill the right weight of gas.", "There may have been too little cooling gas. It may have leaked out."],
    "oil-trapped": ["The oil did not flow back to the part that needs it.", "We mend the pipes so that the oil can flow back.", "The oil may not have flowed back to the part that needs it."],
    "air-moisture": ["Air or water was inside the pipes.", "We pump the pipes empty and dry, and test that they stay so.", "Air or water may have been inside the pipes."],
    "outdoor-coil": ["The outdoor unit could not get rid of its heat.", "We clean the outdoor coil and free the way for the air.", "The outdoor unit may not have got rid of its heat."],
    valve: ["A valve let too much liquid through.", "We change the valve and test it.", "A valve may have let too much liquid through."],
    sensor: ["A sensor gave a wrong reading.", "We fix the sensor and check it with our own.", "A sensor may have given a wrong reading."],
    overcharge: ["There was too much cooling gas in the system.", "We take the gas out and fill the right weight.", "There may have been too much cooling gas in the system."],
    scale: ["Dirt blocked small parts inside the pipes.", "We clean the screens and valves.", "Dirt may have blocked small parts inside the pipes."],
    heater: ["The part was cold when it started.", "We test its heater and warm it before each start.", "The part may have been cold when it started."],
    inverter: ["The board that drives the motor had a fault.", "We test the board and what it drives, and change what is bad.", "The board that drives the motor may have had a fault."],
    sound: ["The part itself was not broken. Something else made it stop.", "We fix what made it stop.", "The part itself may not be broken. Something else may have made it stop."],
    restriction: ["Something blocked the flow in a pipe.", "We find the blocked spot and clean or change it.", "Something may have blocked the flow in a pipe."],
    "oil-wrong": ["The oil was not the right kind or not the right amount.", "We drain it and fill the right oil.", "The oil may have been the wrong kind or the wrong amount."],
    "low-load": ["The system started and stopped too often.", "We change the settings so that it runs longer and stops less.", "The system may have started and stopped too often."],
    supply: ["The power supply was not steady.", "We mend the supply and fit a guard against it.", "The power supply may not have been steady."],
    "outdoor-fan": ["An outdoor fan did not run right.", "We change the fan motor.", "An outdoor fan may not have run right."],
    "wrong-setting": ["A part or a switch did not match the unit.", "We check each part and switch against the unit’s own label.", "A part or a switch may not have matched the unit."],
    part: ["The part itself had a fault.", "We send the part back to be looked at.", "The part itself may have had a fault."],
    "reversing-valve": ["A valve leaked inside.", "We change that valve.", "A valve may have leaked inside."],
    "vacuum-start": ["It ran while a valve was shut or the pipes were empty.", "We open and check all the valves before each start.", "It may have run while a valve was shut or the pipes were empty."],
  } as Record<string, readonly [string, string, string]>,
} as const;

/** Fills {name} places. */
export function fill(phrase: string, values: Record<string, string | number>): string {
  return phrase.replace(/\{(\w+)\}/g, (whole, name: string) => (name in values ? String(values[name]) : whole));
}

/** "1, 4 and 7" */
export function list(items: readonly (string | number)[]): string {
  const all = items.map(String);
  return all.length < 2 ? all.join("") : `${all.slice(0, -1).join(", ")} and ${all[all.length - 1]}`;
}
