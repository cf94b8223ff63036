// One rule, row or binding broken at a time, and the test that must notice. Read by run.mjs.
//   file    where it stands
//   old     the text there, exactly once in the file
//   broken  what it is replaced with; must still compile
//   breaks  what is wrong then, as a sentence's end: "..."
//   test    the test program (CMake target) that must fail
//   refused true: what it is replaced with must not compile, as a part of that program
// The text of a row follows the file: when a rule is changed, its row is changed with it.
export const mutations = [
  // ---- core/units
  {
    file: 'core/units/format.cpp',
    old: 'if (size >= 999.5) return with_unit(whole_or(ohms / 1e3, 3), "kΩ");',
    broken: 'if (size >= 9995.0) return with_unit(whole_or(ohms / 1e3, 3), "kΩ");',
    breaks: 'kilohms begin at ten thousand ohms',
    test: 'test_units',
  },
  {
    file: 'core/units/format.cpp',
    old: 'const double inches_all = std::round(std::fabs(metres) / kMetresPerInch);',
    broken: 'const double inches_all = std::floor(std::fabs(metres) / kMetresPerInch);',
    breaks: 'feet and inches are cut instead of rounded',
    test: 'test_units',
  },
  {
    file: 'core/units/measure.cpp',
    old: 'constexpr double kInch = 0.0254;',
    broken: 'constexpr double kInch = 0.025;',
    breaks: 'an inch is 25 mm',
    test: 'test_units',
  },
  {
    file: 'core/units/parse.cpp',
    old: 'return comma != std::string_view::npos && comma > 0 && number.front()',
    broken: 'return comma != std::string_view::npos && comma > 9 && number.front()',
    breaks: '"1,200" is taken for 1.2',
    test: 'test_units',
  },
  {
    file: 'core/units/parse.cpp',
    old: '{"\\xE2\\x88\\x92", "-"},  // minus sign',
    broken: '{"\\xE2\\x88\\x92", "+"},  // minus sign',
    breaks: 'a typographic minus sign counts as plus',
    test: 'test_units',
  },

  // ---- core/tables
  {
    file: 'core/tables/ampacity.cpp',
    old: '{"14awg", {20, 20, 25, 30, 35, 40, 45}}',
    broken: '{"14awg", {20, 20, 25, 30, 40, 40, 45}}',
    breaks: '14 AWG at 105 °C carries 40 A in free air',
    test: 'test_tables',
  },
  {
    file: 'core/tables/ampacity.cpp',
    old: 'if (ambient_c >= reading.column_c) return std::nullopt;',
    broken: 'if (ambient_c > reading.column_c + 40.0) return std::nullopt;',
    breaks: 'wire in air hotter than its insulation still carries something',
    test: 'test_tables',
  },
  {
    file: 'core/tables/conductor.cpp',
    old: 'metric("2.5mm2", "2.5", 2.5, 7.98)',
    broken: 'metric("2.5mm2", "2.5", 2.5, 7.41)',
    breaks: '2.5 mm² has the resistance of stiffer class 2 strands',
    test: 'test_tables',
  },
  {
    file: 'core/tables/supply.cpp',
    old: 'Volts(12.85), Volts(12.1), Volts(14.7), Ohms(0.005), &kLeadAgm',
    broken: 'Volts(12.85), Volts(12.1), Volts(14.7), Ohms(0.05), &kLeadAgm',
    breaks: 'an AGM battery has ten times its resistance',
    test: 'test_tables',
  },
  {
    file: 'core/tables/supply.cpp',
    old: 'return blocks < 3.0 ? 2 : 4;',
    broken: 'return blocks < 3.0 ? 2 : 3;',
    breaks: 'a 48 V battery is three blocks',
    test: 'test_tables',
  },
  {
    file: 'core/tables/fuse.cpp',
    old: 'gate(2.00, 0.15, 5.0, Standing::seen_twice)',
    broken: 'gate(2.00, 0.15, 0.5, Standing::seen_twice)',
    breaks: 'a blade fuse opens ten times sooner at twice its rating',
    test: 'test_tables',
  },
  {
    file: 'core/tables/fuse.cpp',
    old: 'if (step.opens_within && multiple >= step.multiple) slowest = step.opens_within;',
    broken: 'if (step.opens_within && multiple > step.multiple - 0.5) slowest = step.opens_within;',
    breaks: 'a fuse is promised to open at the gate before it is reached',
    test: 'test_tables',
  },
  {
    file: 'core/tables/terminal.cpp',
    old: '{"blue", SquareMillimetres(1.5), SquareMillimetres(2.5), "16 to 14", Millimetres(6)',
    broken: '{"blue", SquareMillimetres(1.5), SquareMillimetres(4.0), "16 to 14", Millimetres(6)',
    breaks: 'a blue crimp takes 4 mm²',
    test: 'test_tables',
  },

  // ---- core/calculators
  {
    file: 'core/calculators/run.cpp',
    old: 'return tables::resistance_at(wire.resistance_20c, metal) * length * 2.0;',
    broken: 'return tables::resistance_at(wire.resistance_20c, metal) * length;',
    breaks: 'the way back is left out of a run',
    test: 'test_calculators',
  },
  {
    file: 'core/calculators/battery.cpp',
    old: 'std::pow(rated_a / load.number(), exponent - 1.0)',
    broken: 'std::pow(rated_a / load.number(), exponent)',
    breaks: "Peukert's exponent is one too large",
    test: 'test_calculators',
  },
  {
    file: 'core/calculators/carrying.cpp',
    old: 'if (smallest && *smallest <= pick.ceiling->most) pick.fuse = smallest;',
    broken: 'if (smallest) pick.fuse = smallest;',
    breaks: 'a fuse larger than the wire stands is picked',
    test: 'test_calculators',
  },
  {
    file: 'core/calculators/power.cpp',
    old: 'const units::Volts across = joined == Joined::in_series ? all.current * load : supply;',
    broken: 'const units::Volts across = joined == Joined::in_series ? supply : all.current * load;',
    breaks: 'voltages in series and in parallel are swapped',
    test: 'test_calculators',
  },

  // ---- core/drawing
  {
    file: 'core/drawing/svg.cpp',
    old: `else if (c == '"') safe += "&quot;";`,
    broken: `else if (c == '"') safe += "\\"";`,
    breaks: 'a quotation mark in a name breaks out of its attribute',
    test: 'test_drawing',
  },
  {
    file: 'core/drawing/hit_test.cpp',
    old: 'if (polyline->closed && points.size() > 2) {',
    broken: 'if (polyline->closed && points.size() > 200) {',
    breaks: 'the last side of a closed line is not felt',
    test: 'test_drawing',
  },
  {
    file: 'core/drawing/palette.cpp',
    old: '{Ink::muted,    {0x57, 0x5D, 0x64}',
    broken: '{Ink::muted,    {0x97, 0x9D, 0xA4}',
    breaks: 'quiet words are too pale to read by day',
    test: 'test_drawing',
  },

  // ---- core/network
  {
    file: 'core/network/load_law.h',
    old: 'return law == Law::constant_power ? value / voltage_v : value;',
    broken: 'return law == Law::constant_power ? value / fold_v : value;',
    breaks: 'a device of constant power draws no more when its voltage sags',
    test: 'test_network',
  },
  {
    file: 'core/network/load_law.h',
    old: 'if (voltage_v <= 0.0) return 0.0;',
    broken: 'if (voltage_v <= 0.0) return folded_siemens() * voltage_v;',
    breaks: 'a reversed device conducts',
    test: 'test_network',
  },
  {
    file: 'core/network/star_mesh.cpp',
    old: 'amperes_[at(target->edge)] += target->sign * (g_j * q_k - g_k * q_j);',
    broken: 'amperes_[at(target->edge)] += target->sign * (g_j * q_k + g_k * q_j);',
    breaks: 'sources are moved with the wrong sign when a node is taken away',
    test: 'test_network',
  },

  // ---- core/circuit
  {
    file: 'core/circuit/history.h',
    old: 'if (joins) return;  // the earlier state is the one to go back to',
    broken: 'if (joins) back_.pop_back();',
    breaks: 'undo of a drag goes back to its last step only',
    test: 'test_circuit',
  },
  {
    file: 'core/circuit/name.cpp',
    old: 'is_within(c, 0x2028, 0x202E)',
    broken: 'is_within(c, 0x2028, 0x2029)',
    breaks: 'a name may turn the direction of what follows it',
    test: 'test_circuit',
  },

  // ---- core/sizing
  {
    file: 'core/sizing/rules.cpp',
    old: '{circuit::Setting::boat, tables::GaugeSystem::awg, 1.30, &kBoatAwgCitation}',
    broken: '{circuit::Setting::boat, tables::GaugeSystem::awg, 0.82, &kBoatAwgCitation}',
    breaks: 'a boat may be wired with 18 AWG',
    test: 'test_sizing',
  },
  {
    file: 'core/sizing/rules.cpp',
    old: 'return insulation_rating > units::Celsius(105.0) ?',
    broken: 'return insulation_rating > units::Celsius(90.0) ?',
    breaks: '105 °C insulation is taken to stand a short up to 250 °C',
    test: 'test_sizing',
  },
  {
    file: 'core/sizing/protection.cpp',
    old: 'if (into_.least == nullptr || link.most < into_.least->most) into_.least = &link;',
    broken: 'if (into_.least == nullptr || link.most > into_.least->most) into_.least = &link;',
    breaks: 'the fuse is held to the strongest link of its path',
    test: 'test_sizing',
  },
  {
    file: 'core/sizing/protection.cpp',
    old: '      if (link.most < known.most) known = link;\n',
    broken: '',
    breaks: 'of several parts of a kind the first one counts, not the weakest',
    test: 'test_sizing',
  },

  // ---- core/diagnosis
  {
    file: 'core/diagnosis/answer.cpp',
    old: '{AnswerKey::plus_splice, "red-splice"},\n    {AnswerKey::minus_splice, "black-splice"},',
    broken: '{AnswerKey::plus_splice, "black-splice"},\n    {AnswerKey::minus_splice, "red-splice"},',
    breaks: 'the texts of two answers change places in files',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: '{A::yes, "Yes, as always", no_bounds, as_seen},',
    broken: '{A::no, "Yes, as always", no_bounds, as_seen},',
    breaks: 'two answers of a check have the same key',
    test: 'test_diagnosis',
    refused: true,
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: '{A::whole, "There, and whole", no_bounds, as_seen},\n                               {A::blown, "Blown", no_bounds, as_seen},',
    broken: '{A::whole, "Blown", no_bounds, as_seen},\n                               {A::blown, "There, and whole", no_bounds, as_seen},',
    breaks: 'the words of two answers about the fuse change places',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: '{A::dies, "Dead now", no_bounds, as_seen},\n                               {A::stays, "It still runs", no_bounds, as_seen},',
    broken: '{A::stays, "Dead now", no_bounds, as_seen},\n                               {A::dies, "It still runs", no_bounds, as_seen},',
    breaks: 'the keys of two answers to a pulled fuse change places',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: '{A::bright, "Bright", from_share<Judged::bright_from>, in_range},\n                               {A::dim, "Dim",',
    broken: '{A::bright, "Dim", from_share<Judged::bright_from>, in_range},\n                               {A::dim, "Bright",',
    breaks: 'a bright lamp is called dim, and the other way round',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: '"Look only: a tool that slips here draws hundreds of amperes."',
    broken: '""',
    breaks: 'no caution at the main switch',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: 'kHands, kBehind, see_behind},',
    broken: '"", kBehind, see_behind},',
    breaks: 'hands behind an outlet without a caution',
    test: 'test_diagnosis',
    refused: true,
  },
  {
    file: 'core/diagnosis/check_rows.cpp',
    old: '"", kAddUp, see_add_up},',
    broken: '"", kAddUp},',
    breaks: 'the row of a check leaves out how likely its answers are',
    test: 'test_diagnosis',
    refused: true,
  },
  {
    file: 'core/diagnosis/fault.cpp',
    old: 'return {A::plus_splice, A::minus_splice, A::fine, often}',
    broken: 'return {A::minus_splice, A::plus_splice, A::fine, often}',
    breaks: 'a bad plus splice is seen at the minus splice',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/fault.cpp',
    old: 'fuse_seen(A::elsewhere, 0.96, A::missing)',
    broken: 'fuse_seen(A::missing, 0.96, A::elsewhere)',
    breaks: 'a fuse in another position is seen as none',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/fault.cpp',
    old: 'seen(A::crossed_tabs, 0.85)',
    broken: 'seen(A::holds, 0.85)',
    breaks: 'a fault is seen as an answer that its check does not have',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/fault.cpp',
    old: 'R::fit_fuse, 2, &kMinutesEstimate},\n    {fuse_missing,',
    broken: 'R::fit_fuse, 2},\n    {fuse_missing,',
    breaks: 'the minutes of a repair have no source',
    test: 'test_diagnosis',
    refused: true,
  },
  {
    file: 'core/diagnosis/fault.cpp',
    old: '"The {side} tab at {outlet} is off", P::socket_side,',
    broken: '"The {side} tab at {outlet} is off", P::run_side,',
    breaks: 'a tab is off at a junction that has none',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/sight.cpp',
    old: 'seen.add(AnswerKey::all, all).add(AnswerKey::some, std::max(0.0, 1.0 - all - none)).add(AnswerKey::none, none);',
    broken: 'seen.add(AnswerKey::none, all).add(AnswerKey::some, std::max(0.0, 1.0 - all - none)).add(AnswerKey::all, none);',
    breaks: 'all others work, and it is taken for none of them',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/likelihood.cpp',
    old: 'answer_row(row, choices[c].key)->chance',
    broken: 'row.answers[c].chance',
    breaks: 'a likelihood is bound to its answer by place',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/remedy_rows.cpp',
    old: '{R::remake_clamp, "remake-clamp", kBySide, kDeadHands, kInSupply,',
    broken: '{R::remake_clamp, "remake-clamp", kBySide, kDeadHands, kBeyondFuse,',
    breaks: 'the clamps are remade beside a live feed stud',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/remedy_rows.cpp',
    old: 'kClampCautions[] = {kNoSwitch, kStud};',
    broken: 'kClampCautions[] = {kNoSwitch};',
    breaks: 'work at the clamps without a word of the feed stud',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/remedy_rows.cpp',
    old: 'kBeyondFuse, kTab, kTabCautions},',
    broken: 'kBeyondFuse, kTab, {}},',
    breaks: 'a repair without a caution',
    test: 'test_diagnosis',
    refused: true,
  },
  {
    file: 'core/diagnosis/case.cpp',
    old: 'built.protection == Protection::protects &&',
    broken: 'built.protection != Protection::too_large &&',
    breaks: 'a fuse is named that nobody judged against the wire',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/case.cpp',
    old: 'run->wire_known == Knowledge::known;',
    broken: 'run->wire_known != Knowledge::unknown;',
    breaks: 'a wire that is guessed counts as known',
    test: 'test_diagnosis',
  },
  {
    file: 'core/diagnosis/built.cpp',
    old: 'if (wire == nullptr) wire = wanted != nullptr ? wanted : usual_wire(the_case);',
    broken: 'if (wanted != nullptr) wire = wanted; else if (wire == nullptr) wire = usual_wire(the_case);',
    breaks: 'the size that a plan wants goes before the wire that is there',
    test: 'test_diagnosis',
  },

  // ---- core/reference
  {
    file: 'core/reference/search.cpp',
    old: 'kept.weight = std::max(kept.weight, posting.weight);',
    broken: 'kept.weight = std::min(kept.weight + 1.0F, posting.weight);',
    breaks: 'a word in a title weighs as little as one in a text',
    test: 'test_reference_pages',
  },

  // ---- wasm/ui
  {
    file: 'wasm/ui/keypad.cpp',
    old: "if (character == \".\" && text.find('.', number) != std::string::npos) return;",
    broken: '',
    breaks: 'a number takes two decimal points',
    test: 'test_ui',
  },

  // ---- wasm
  {
    file: 'wasm/app/route.cpp',
    old: '{Screen::trace, Sheet::trace_again, "again"}',
    broken: '{Screen::trace, Sheet::trace_fitted, "again"}',
    breaks: 'an address of Trace opens another sheet',
    test: 'test_app',
  },
  {
    file: 'wasm/app/route.cpp',
    old: 'if (sheet == Sheet::row) return page(key);',
    broken: 'if (sheet == Sheet::row) return at(Screen::size);',
    breaks: 'closing a row of a table leaves the table',
    test: 'test_app',
  },
  {
    file: 'wasm/app/preferences.cpp',
    old: 'for (const std::string& line : preferences.unknown_lines) text += line + "\\n";',
    broken: '',
    breaks: "a newer app's preferences are dropped",
    test: 'test_app',
  },
  {
    file: 'wasm/ui/touch_machine.cpp',
    old: 'const bool tap = phase == Touch::end && (was == Is::waiting || was == Is::held);',
    broken: 'const bool tap = phase == Touch::end;',
    breaks: 'the end of a drag counts as a tap',
    test: 'test_ui',
  },
  {
    file: 'wasm/ui/touch_machine.cpp',
    old: 'if (state_ != Is::idle) return false;      // a second finger',
    broken: '',
    breaks: 'a second finger takes over from the first',
    test: 'test_ui',
  },
  {
    file: 'wasm/mirror/feed.cpp',
    old: '    hash.bytes(record.value);\n',
    broken: '',
    breaks: 'a changed value is not told to the screen reader',
    test: 'test_mirror',
  },
];
