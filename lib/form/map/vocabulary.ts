/**
 * How forms word what a job holds: for each figure id or field, the labels that ask for it. The wordings come from public
 * submittal forms, from ASHRAE 62.2, ISO 9972 (n50, qE50) and the IECC (air changes at 50 Pa, cfm per 100 ft2), and
 * from common practice without a source.
 *
 * Labels are matched as lower-case words, letters and digits apart: `CFM50 (ft³/min)` is `cfm 50 ft 3 min`.
 */

interface Wording {
  /** Labels that ask for just this. */
  says: RegExp
  /** Labels that may ask for this. */
  hints?: RegExp
  /** Labels that ask for something else although they match. */
  never?: RegExp
  /** Value of the autocomplete attribute that means this. */
  autocomplete?: string
}

const perArea = /\bper\b.*\b(sq|square|ft|sf|m|area)\b|\bcfm \d* ?(ft|sf)\b/
// Of a zone beside the house only what names one: a house pressure is asked for of every test.
const besides = String.raw`(zone|attic|garage|crawl ?space|basement|knee ?wall)`
const noZone = new RegExp(String.raw`^(?!.*\b${besides}\b)`)
const asks = (of: string): Wording => ({ says: new RegExp(of.replaceAll('ZONE', besides)), never: noZone })
const ducts = /\bducts?\b|\b25\b/

export const vocabulary: Readonly<Record<string, Wording>> = {
  address: {
    says: /^(full|site|property|project|job|service|building|test|house|home) (address|location)( (and|or|with) .*)?$|^address( .* (town|city|zip)\b.*)?$|^(address|location) of (the )?(tested )?(test|site|property|project|house|home|building|dwelling)( tested)?$|\bwhere\b.*\b(test(ed)?|house|home|building|property|work)\b/,
    hints: /\baddress\b/,
    never: /\be ?mail\b|\b(mailing|billing|postal|web|previous)\b|\bstreet\b|\bline [12]\b/,
  },
  street: {
    says: /\bstreet( address)?\b|\baddress line 1\b/,
    hints: /\baddress\b/,
    never: /\be ?mail\b|\b(mailing|billing|postal|web|previous)\b|\baddress line 2\b|^(address|location) of\b/,
    autocomplete: 'street-address',
  },
  unit: {
    says: /\b(unit|apt|apartment|suite|lot)\b( (no|number|id))?$|^(unit|apt|apartment)\b.*\b(or|lot)\b|\baddress line 2\b/,
    autocomplete: 'address-line2',
  },
  town: { says: /\b(city|town|municipality)\b/, autocomplete: 'address-level2' },
  state: { says: /\b(state|province)\b/, autocomplete: 'address-level1' },
  postcode: { says: /\bzip\b|\bpost(al)? ?code\b/, autocomplete: 'postal-code' },
  permit: { says: /\bpermit\b/, never: /\bdate\b|\b(issued?|fee|type|holder|status|expir\w*)\b/ },
  program: {
    says: /\b(application|program|programme|registry|registration|rebate|enrol+ment|case|job|work order) (number|no|id|ref)\b/,
    hints: /\b(project|reference) (number|no|id)\b/,
  },
  builder: {
    says: /\bbuilder\b( of record)?$|\bgeneral contractor\b|^builder or contractor\b|^(responsible )?contractor( (responsible|of record))?$|\b(builder|contractor) s? ?name\b/,
    hints: /\b(contractor|builder)\b/,
    never:
      /\b(mechanical|hvac|heating|cooling|electrical|plumbing|roofing|insulation|testing|air sealing|solar|sub ?contractor|licen[cs]e|phone|e ?mail|address|number|no|id)\b/,
  },
  'floor-area': {
    says: /\bfloor area\b|\bcfa\b|\bsquare footage\b|\b(conditioned|heated|living|finished) (area|space)\b.*|\bfloor space\b|\barea of (the )?(conditioned|heated|living)\b/,
    hints: /\barea\b/,
    never:
      /\bvolume\b|\bper\b|\bleakage\b|\b(enclosure|envelope|shell|surface|crawl ?space|attic|garage|basement|window|wall|roof|lot)\b/,
  },
  volume: { says: /\bvolume\b/, never: /\bper\b|\b(attic|crawl ?space|garage|tank|duct)\b/ },
  'enclosure-area': {
    says: /\b(enclosure|envelope|shell|surface)( surface)? area\b|\b(surface )?area of (the )?(building |thermal )?(enclosure|envelope|shell)\b/,
    never: /\bper\b/,
  },
  height: { says: /\b(ceiling|infiltration|building) height\b/, hints: /\bheight\b/ },
  bedrooms: { says: /\bbed ?rooms?\b/ },
  stories: { says: /\b(stories|storeys?|story)\b|\bnumber of floors\b|^floors( above grade)?$/, never: /\bwhich\b/ },
  'climate-zone': {
    says: /\bclimate zone\b|\b((energy )?code|iecc|ashrae|site|energy|weather) zone\b|^zone of (the )?(site|building|house|home|property|project)$|^zone (under|by|per|in|from) (the )?(energy )?(code|iecc|ashrae)\b/,
    hints: /^zone\b|\bzone$/,
    never:
      /\b(pressure|flood|fire|seismic|time|zoning|wind|heating|cooling|duct|house zone|attic|garage|crawl ?space|basement)\b/,
  },
  'area-source': {
    says: /\b(area|volume)s?\b.*\b(source|obtained|determined|taken from|based on)\b|\bhow\b.*\b(obtained|determined)\b/,
  },
  'weather-shielding-factor': { says: /\bshielding factor\b|\bwsf\b/ },
  elevation: { says: /\b(elevation|altitude)\b/ },
  name: {
    says: /\b(tester|technician|rater|inspector|auditor|assessor|verifier)( s)?( printed| full)?( name)?$|\b(tested|performed|conducted) by\b|\bprinted name\b|\bname of (the )?(tester|technician|rater|inspector|auditor|assessor)\b|\b(person|who)\b.*\b(ran|did|performed|conducted|carried out|made)\b.*\btest\w*\b|\bwho tested\b|\b(test|blower door) operator\b/,
    hints: /\bname\b/,
    never:
      /\b(company|business|firm|project|street|owner|customer|builder|program|user)\b|\b(licen[cs]e|number|id|no|signature|last|first|middle|supervisor)\b/,
    autocomplete: 'name',
  },
  company: {
    says: /\b(company|firm|agency|organi[sz]ation|business)( name)?$|\bname of (the )?(testing )?(company|firm|agency)\b|\btester s (company|employer)\b/,
    hints: /\b(company|firm|agency|organi[sz]ation|business|employer)\b/,
    never:
      /\b(heating|insulation|electric|gas|mechanical|hvac|title|licen[cs]e|number|id|phone|e ?mail|utility|insurance)\b/,
    autocomplete: 'organization',
  },
  licence: {
    says: /\b(licen[cs]e|certification|certificate|cert|credential|rater|tester|technician|registration) (number|no|id)\b|^licen[cs]e$|\b(number|no|id) of (the )?(tester|certification|licen[cs]e|certificate|credential)\b/,
    hints: /\b(number|no|id)\b/,
    never:
      /\bexpir|\b(phone|contact|permit|serial|account|business|contractor|builder|mechanical|hvac|calibration|cfm|pa)\b/,
  },
  'licence-expiry': {
    says: /\b(licen[cs]e|certification|certificate)\b.*\bexpir\w*|\bexpir\w* date\b|\blicen[cs]e valid\b|\blicen[cs]e\b.*\b(until|through|thru)\b/,
    hints: /\bvalid (until|through|thru|to)\b|\bexpir\w*\b/,
    never: /\b(permit|insurance|calibrat\w*|warranty|card)\b/,
  },
  phone: { says: /\b(tele)?phone\b|\bmobile\b/, autocomplete: 'tel' },
  email: { says: /\be ?mail\b/, autocomplete: 'email' },
  date: {
    says: /\b(test|testing|inspection) date\b|\bdate (of (the )?(blower door |duct |air |leakage )*(test|testing|reading|measurement|inspection|visit)|tested|performed)\b|^date of$|\bdate\b.*\b(was |were )?(tested|test was done)\b|^tested (on|when)$|\bwhen\b.*\b(was|were)\b.*\btest(ed)?\b|\b(day|date) of test\b|^date$/,
    hints: /\bdate\b/,
    never:
      /\b(install\w*|issued?|application|payment|received|signature|signed|sale|closing|completion|start|approved|calibrat\w*|construction|purchase|manufacture|mailed|submitted|permit)\b|\bexpir|\bbirth\b|\bpermit\b|\binvoice\b|\bdue\b/,
  },
  stage: {
    says: /\b(stage|phase) of (construction|work|test)\b|\b(construction|test) (stage|phase)\b|\bstage\b/,
    hints: /\btest type\b|\bphase\b|\bwhen tested\b|\btype of test\b/,
  },
  wind: { says: /\bwind\b|\bweather\b/, never: /\bshielding\b/ },
  range: {
    says: /\b(flow|fan|device) range\b|^range( used)?$|\brange\b|\bconfiguration\b/,
    never: /\b(price|age|oven|temperature)\b/,
  },
  direction: {
    says: /\bdirection\b|\b(de)?pressuri[sz]\w*\b/,
    hints: /\btest (mode|type)\b|\btype of test\b|\bhouse was\b/,
  },
  procedure: { says: /\b(procedure|protocol|test method|standard used)\b/, hints: /\bstandard\b/ },
  leakage: { says: /\btotal or (to )?outside\b|\bleakage (type|measured)\b|\b(type|kind) of (duct )?leakage\b/ },
  'air-handler-flow': { says: /\b(air handler|system|fan) (air ?)?flow\b/, never: /%|\bpercent\b/ },
  'instrument-figure': { says: /\b(gauge|instrument)( s own)? (reading|figure|result|display)\b/ },
  'baseline-mean': { says: /\bbaseline\b|\bzero flow pressure\b/ },
  'zone-house': { says: /(?!)/, never: noZone },
  'zone-house-pressure': asks(
    String.raw`\bhouse\b.*\bZONE\b.*\bpressure\b|\bZONE\b.*\b(to|wrt|with (respect|reference) to) (the )?house\b`,
  ),
  'zone-outdoors-pressure': asks(
    String.raw`\bZONE\b.*\b(outdoors?|outside)\b.*\bpressure\b|\bZONE\b.*\b(wrt|with (respect|reference) to) (the )?(outdoors?|outside)\b`,
  ),
  'zone-ratio': asks(String.raw`\bZONE\b.*\bratio\b|\bratio\b.*\bZONE\b`),
  'zone-house-leakage': asks(
    String.raw`\bhouse\b.*\bZONE\b.*\b(leakage|flow|cfm)\b|\b(leakage|flow|cfm)\b.*\bhouse\b.*\bZONE\b`,
  ),
  'zone-outdoors-leakage': asks(
    String.raw`\bZONE\b.*\b(outdoors?|outside)\b.*\b(leakage|flow|cfm)\b|\b(leakage|flow|cfm)\b.*\bZONE\b.*\b(outdoors?|outside)\b`,
  ),
  'zone-through-leakage': asks(String.raw`\b(leakage|flow|cfm)\b.*\bthrough (the )?ZONE\b`),
  pressure: { says: /\b(house|building|induced|test) pressure\b|\bpressure (as )?(read|reading|difference)\b/ },
  'device-pressure': { says: /\b(device|fan) pressure\b/ },
  'flow-as-shown': { says: /\bflow (as )?(shown|reading)\b|\bindicated flow\b/ },
  device: {
    says: /\b(device|equipment|instrument)( make| model| name| used)*$|\b(test|blower door|calibrated) fan\b.*\b(used|model|name)\b|^fan used$|\bfan (make|model)\b|\bblower door (used|model|make)\b/,
    never: /\b(heating|cooling|hvac|ventilation|exhaust|air handler|water)\b/,
  },
  'device-serial': { says: /\bserial\b/ },
  'device-calibrated': { says: /\bcalibrat\w*\b/ },
  indoor: { says: /\b(indoor|inside|interior)\b.*\btemp\w*|\btemp\w*\b.*\b(indoors?|inside)\b/ },
  outdoor: { says: /\b(outdoor|outside|exterior)\b.*\btemp\w*|\btemp\w*\b.*\b(outdoors?|outside)\b/ },
  notes: {
    says: /\b(comments?|notes|remarks|observations)\b|\banything (else )?(we|you|to|that)\b|\badditional (information|details)\b/,
  },
  verdict: {
    says: /\b(did|does|do) (the |this )?(home|house|building|dwelling|unit|system|ducts?|test|it) (pass|meet|comply)\b|\btest outcome\b|\boutcome of (the )?test\b|\bpass\b.*\bfail\b|\b(test )?result$|\bresult (against|versus|vs) (the )?limit$|\bcompl(iance|iant|ies)\b|\bmeets\b/,
    never: /\bsigned\b/,
  },
  limit: {
    says: /\b(limit|target|(maximum|max) (allowed|permitted|leakage|air leakage)|(allowed|permitted) (maximum|leakage)|allowable)\b/,
    never: /\bpass\b|\bresult\b|\bmeets?\b|\bwork order\b/,
  },
  'flow-4': { says: /\b(cfm|flow|leakage|q)\b.*\b4( pa)?\b/, never: /\barea\b/ },
  'flow-10': { says: /\b(cfm|flow|leakage|q)\b.*\b10( pa)?\b/, never: /\barea\b/ },
  'flow-25': { says: /\b(cfm|flow|leakage|q)\b.*\b25\b/, never: /\bducts?\b|\bper\b/ },
  'flow-50': {
    says: /\b(cfm|cubic feet per minute|m 3 h|flow|air ?flow|leakage|q|v)\b.*\b50\b|\b50 (pa|pascals?)\b.*\b(cfm|flow|leakage)\b/,
    hints: /\bair leakage\b|\bcfm\b|\bleakage (flow|rate)\b/,
    never: new RegExp(
      `\\b(target|limit|allowed|allowable|required|permitted|goal|maximum)\\b|\\bach\\b|\\bair changes?\\b|\\bas read\\b|\\breduction\\b|\\barea\\b|${perArea.source}|${ducts.source}`,
    ),
  },
  'flow-50-as-read': { says: /\b(as read|indicated|instrument|gauge)\b.*\b50\b|\b50\b.*\b(as read|indicated)\b/ },
  'flow-75': { says: /\b(cfm|flow|leakage|q)\b.*\b75\b/, never: perArea },
  'air-changes-50': {
    says: /\bach 50\b|\bn 50\b|\bach\b.*\b50\b|\bair ?changes?\b.*\b50\b/,
    hints: /\bach\b|\bair ?changes?\b/,
    never: /\b(target|limit|allowed|allowable|required|permitted|goal|maximum)\b|\bnatural\b|\bach ?nat\w*\b/,
  },
  'natural-air-changes': {
    says: /\bnatural\b.*\b(air changes?|ach|infiltration)\b|\bach ?nat\w*\b|\bach\b.*\bnatural\b/,
  },
  'flow-50-per-enclosure-area': {
    says: /\b50\b.*\bper\b.*\b(enclosure|envelope|shell|surface)\b|\bcfm 50 (ft|sf)\b|\bqe 50\b/,
  },
  'flow-50-per-floor-area': { says: /\b50\b.*\bper\b.*\bfloor\b|\bqf 50\b/ },
  'flow-75-per-enclosure-area': {
    says: /\bcfm 75 (ft|sf)\b|\b75\b.*\bper\b.*\b(sq|square|ft|sf|enclosure|envelope)\b/,
  },
  'effective-leakage-area': { says: /\bela\b|\beffective (air )?leakage area\b/, hints: /\bleakage area\b/ },
  'equivalent-leakage-area': { says: /\beq ?la\b|\bequivalent (air )?leakage area\b/ },
  'specific-leakage-area': { says: /\bsla\b|\bspecific leakage area\b/ },
  'normalized-leakage': { says: /\bnormali[sz]ed leakage\b|^nl$/, never: /\bducts?\b/ },
  'leakage-exponent': { says: /\b(flow |leakage |pressure )?exponent\b|^n$/ },
  'leakage-coefficient': { says: /\b(flow |leakage )?coefficient\b|^c$/, never: /\bcorrelation\b/ },
  correlation: { says: /\bcorrelation\b|^r 2$|\br (2|squared?)\b/ },
  'infiltration-credit': { says: /\binfiltration credit\b/ },
  'ventilation-required': {
    says: /\b(required|minimum)\b.*\bventilation\b|\bventilation\b.*\b(required|rate)\b|\bwhole (house|building|dwelling)\b.*\bventilation\b/,
  },
  'fan-required': { says: /\b(required|minimum) fan\b|\bfan\b.*\b(required|flow)\b/ },
  'duct-flow-25': {
    says: /\bducts?\b.*\b25\b|\b(cfm|flow|leakage|q)\b.*\b25\b|\bduct leakage\b/,
    hints: /\bleakage to (outside|outdoors)\b|\btotal leakage\b/,
    never: new RegExp(`${perArea.source}|%|\\bpercent\\b`),
  },
  'duct-flow-25-as-read': { says: /\b(as read|indicated|instrument|gauge)\b.*\b25\b|\b25\b.*\b(as read|indicated)\b/ },
  'duct-flow-25-per-floor-area': { says: /\bper 100\b|\b(duct|25)\b.*\bper\b.*\b(floor|sq|square|ft|m)\b|^qn$/ },
  'duct-share-of-air-handler': {
    says: /(%|\bpercent\b).*\b(air handler|fan)\b|\b(air handler|fan)\b.*(%|\bpercent\b)/,
    hints: /\bduct\b.*(%|\bpercent\b)/,
  },
  // The French word is the same.
  reduction: { says: /\breduction\b/, never: /%|\bpercent\b|\bpourcentage\b/ },
  'reduction-percent': {
    says: /(%|\bpercent(age)?\b).*\breduc(tion|ed)\b|\breduc(tion|ed)\b.*(%|\bpercent(age)?\b)/,
    hints: /\breduction\b/,
  },
}
