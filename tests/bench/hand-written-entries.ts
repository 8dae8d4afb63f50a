import { cellOfColumn, cellOfLine, type OptionResults } from '../../src/quote/option-results.ts';

export type HandSystem = 'flake' | 'solid';

/** What the hand-written quote is worked out from: the entries of one option and nothing the engine worked out. */
export type HandEntries = ReturnType<typeof handEntriesOf>;

/** Reads an option's entries. A row cell that holds a formula reads NaN, so that one forgotten by hand shows at once. */
export function handEntriesOf(results: OptionResults, system: HandSystem) {
  const reader = new EntryReader(results);
  return {
    system,
    ...shopEntries(reader),
    ...equipmentEntries(reader),
    ...floorEntries(reader),
    ...systemEntries(reader),
    ...rowEntries(reader),
    products: productEntries(reader),
  };
}

/** Tasks that more than two people are no quicker at. */
const byTwo = ['skim_cracks', 'shave_again', 'prime_spots'];

export type TaskEntry = ReturnType<typeof taskEntry> & { readonly lays: boolean; readonly most: number };

function shopEntries({ number, code }: EntryReader) {
  return {
    labourRate: number('labour_rate'),
    usualCrew: number('usual_crew'),
    dayBegins: number('day_begins'),
    dayLength: number('day_length'),
    longestDay: number('longest_day'),
    latestCoatStart: number('latest_coat_start'),
    overtimeFactor: number('overtime_factor'),
    overtimeAfterDay: number('overtime_after_day'),
    overtimeAfterWeek: number('overtime_after_week'),
    tripsAWeek: number('trips_a_week'),
    knownWithin: number('hours_known_within'),
    shopTime: number('shop_time'),
    halfDay: number('half_day'),
    setUpFirst: number('set_up_first'),
    setUpShareLater: number('set_up_share_later'),
    loadOut: number('load_out'),
    washToolsTime: number('wash_tools_time'),
    targetOn: code('target_on'),
    targetMargin: number('target_margin'),
    commissionRate: number('commission_rate'),
    cardFee: number('card_fee'),
    cardShare: number('card_share'),
    cardFixedFee: number('card_fixed_fee'),
    financeFee: number('finance_fee'),
    financeShare: number('finance_share'),
    receiptsTaxRate: number('receipts_tax_rate'),
    contingencyRate: number('contingency_rate'),
    overheadRate: number('overhead_rate'),
    roundTo: number('round_to'),
    minimumVisit: number('minimum_visit'),
    minimumRepair: number('minimum_repair'),
    taxMode: code('tax_mode'),
    salesTaxRate: number('sales_tax_rate'),
    taxableShare: number('taxable_share'),
    depositShare: number('deposit_share'),
    depositCapApplies: number('deposit_cap_applies'),
    depositCapAmount: number('deposit_cap_amount'),
    depositCapShare: number('deposit_cap_share'),
  };
}

function equipmentEntries({ number, rows }: EntryReader) {
  return {
    truckRate: number('truck_rate'),
    equipmentDay: number('equipment_day'),
    planetaryFrom: number('planetary_from'),
    planetaryAlways: number('planetary_always'),
    handToolsUnder: number('hand_tools_under'),
    walkBehindFrom: number('walk_behind_from'),
    machineSets: rows('machine_sets', (cell) => ({
      rate: cell.number('set_rate'),
      dayCost: cell.number('set_day_cost'),
    })),
    hardnessEffects: rows('hardness_effects', wearEntry),
    oldSurfaces: rows('old_surfaces', wearEntry),
    consumablesJob: number('consumables_job'),
    consumablesArea: number('consumables_area'),
    consumablesCoat: number('consumables_coat'),
    freightOrder: number('freight_order'),
    resinWaste: number('resin_waste'),
    heldUp: number('held_up'),
    crackWaste: number('crack_waste'),
    patchWaste: number('patch_waste'),
    callbackHours: number('callback_hours'),
    callbackOther: number('callback_other'),
    redoFactor: number('redo_factor'),
  };
}

function floorEntries({ number, code, rows }: EntryReader) {
  return {
    doorStripWanted: number('door_strip_wanted'),
    areas: rows('areas', (cell) => ({
      shape: cell.code('shape'),
      length: cell.number('length'),
      width: cell.number('width'),
      knownArea: cell.number('known_area'),
      knownEdge: cell.number('known_edge'),
      joined: cell.number('joined'),
    })),
    stemWallLength: number('stem_wall_length'),
    stemWallHeight: number('stem_wall_height'),
    hardness: code('hardness'),
    oldSurface: code('old_surface'),
    crackLength: number('crack_length'),
    jointLength: number('joint_length'),
    jointTreatment: code('joint_treatment'),
    spallCount: number('spall_count'),
    spallArea: number('spall_area'),
    spallDepth: number('spall_depth'),
    pittedArea: number('pitted_area'),
    carsPark: number('cars_park'),
    milesOneWay: number('miles_one_way'),
    driveTime: number('drive_time'),
    tollsAndParking: number('tolls_and_parking'),
  };
}

function systemEntries({ number, code }: EntryReader) {
  return {
    grinder: code('grinder'),
    grindFactor: number('grind_factor'),
    edgeRate: number('edge_rate'),
    stemWallRate: number('stem_wall_rate'),
    stemWallUsualHeight: number('stem_wall_usual_height'),
    repairFinish: code('repair_finish'),
    crackRate: number('crack_rate'),
    shaveRate: number('shave_rate'),
    skimRate: number('skim_rate'),
    secondShaveRate: number('second_shave_rate'),
    primeRate: number('prime_rate'),
    jointRate: number('joint_rate'),
    spallRate: number('spall_rate'),
    spallFactor: number('spall_factor'),
    pitRate: number('pit_rate'),
    pitsInBase: number('pits_in_base'),
    pitsBaseMore: number('pits_base_more'),
    skimWidth: number('skim_width'),
    crewExtra: number('crew_extra'),
    dayStretch: number('day_stretch'),
    coatStartStretch: number('coat_start_stretch'),
    grace: number('grace_hours'),
    aloneUnder: number('alone_under'),
    crewFromTimes: number('crew_from_times'),
    smallFloorTo: number('small_floor_to'),
    usualFloorFrom: number('usual_floor_from'),
    smallFloorShare: number('small_floor_share'),
    leastSetUp: number('least_set_up'),
    touchupRate: number('touchup_rate'),
    redoRate: number('redo_rate'),
    discount: number('discount'),
    repairOnly: number('repair_only'),
  };
}

function rowEntries({ rows }: EntryReader) {
  return {
    crackFills: rows('crack_fills', (cell) => ({
      product: cell.code('product'),
      include: cell.number('include'),
      width: cell.number('fill_width'),
      depth: cell.number('fill_depth'),
      shape: cell.number('fill_shape'),
    })),
    patches: rows('repairs', (cell) => ({
      resin: cell.code('resin'),
      thickener: cell.code('thickener'),
      share: cell.number('thickener_share'),
      include: cell.number('include'),
      depth: cell.number('patch_depth'),
    })),
    coats: rows('coats', (cell) => ({
      product: cell.code('product'),
      include: cell.number('include'),
      filmBy: cell.code('film_by'),
      coverage: cell.number('coverage_typed'),
      wet: cell.number('wet_typed'),
      dry: cell.number('dry_typed'),
      texture: cell.number('texture'),
      drink: cell.number('drink'),
    })),
    broadcast: rows('broadcast', (cell) => ({
      product: cell.code('product'),
      include: cell.number('include'),
      thrown: cell.number('thrown'),
    })),
    additions: rows('additions', (cell) => ({
      product: cell.code('product'),
      include: cell.number('include'),
      dose: cell.number('dose'),
    })),
    extras: rows('extras', (cell) => ({
      product: cell.code('product'),
      include: cell.number('include'),
      pieces: cell.number('pieces'),
    })),
    tasks: Object.fromEntries(
      Object.entries(rows('tasks', taskEntry)).map(([task, entry]) => [
        task,
        { ...entry, lays: task.startsWith('lay_'), most: byTwo.includes(task) ? 2 : Number.POSITIVE_INFINITY },
      ]),
    ),
    releasedHours: Object.values(rows('trips', (cell) => cell.number('released_hours'))),
  };
}

function taskEntry(cell: RowReader) {
  return {
    rate: cell.number('rate'),
    factor: cell.number('factor'),
    include: cell.number('include'),
    people: cell.number('people'),
    visit: cell.number('visit'),
    wait: cell.number('wait'),
    beside: cell.code('beside'),
    helped: cell.number('helped'),
  };
}

function wearEntry(cell: RowReader) {
  return { rateShare: cell.number('rate_share'), diamondUse: cell.number('diamond_use') };
}

/** A product has one kind of pack; the fields of the others are 0. */
function productEntries({ rows }: EntryReader) {
  return rows('products', (cell) => ({
    pack: cell.number('pack_gallons') + cell.number('pack_pounds') + cell.number('pack_pieces'),
    packPrice: cell.number('pack_price'),
    large: cell.number('large_gallons') + cell.number('large_pounds') + cell.number('large_pieces'),
    largePrice: cell.number('large_price'),
    solids: cell.number('solids'),
    cartridge: cell.number('cartridge_volume'),
  }));
}

interface RowReader {
  number(column: string): number;
  code(column: string): string;
}

class EntryReader {
  private readonly results: OptionResults;

  constructor(results: OptionResults) {
    this.results = results;
  }

  readonly number = (line: string): number => this.numberAt(cellOfLine(this.results, line), line);

  readonly code = (line: string): string => this.codeAt(cellOfLine(this.results, line), line);

  /** The rows of a table by their ids. */
  readonly rows = <T>(table: string, read: (cell: RowReader) => T): Record<string, T> => {
    const rows = this.results.option.rows.get(table);
    if (rows === undefined) throw new Error(`The option has no table ${table}`);
    return Object.fromEntries(rows.map(({ id }, row) => [id, read(this.row(table, row))]));
  };

  private row(table: string, row: number): RowReader {
    const cell = (column: string) => cellOfColumn(this.results, table, column, row);
    return {
      number: (column) => this.numberAt(cell(column), `${table}.${column}`, Number.NaN),
      code: (column) => this.codeAt(cell(column), `${table}.${column}`),
    };
  }

  private numberAt(cell: number | undefined, name: string, ofFormula?: number): number {
    if (cell === undefined) throw new Error(`The option has no ${name}`);
    if (this.results.option.plan.cells[cell]?.content.kind === 'formula') {
      if (ofFormula !== undefined) return ofFormula;
      throw new Error(`${name} is worked out, not entered`);
    }
    const value = this.results.read(cell);
    if (typeof value !== 'number') throw new Error(`${name} is no number`);
    return value;
  }

  private codeAt(cell: number | undefined, name: string): string {
    const value = cell === undefined ? undefined : this.results.read(cell);
    if (typeof value !== 'string') throw new Error(`${name} is no code`);
    return value;
  }
}
