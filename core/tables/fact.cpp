#include "tables/fact.h"

#include <array>

#include "tables/citation_list.h"

namespace tables {
namespace {

using T = Topic;

constexpr std::array<Fact, 8> kFusePlace{{
    {T::fuse_place, "at-source", "Every positive wire", "A fuse or breaker where the wire gets its current", "",
     "fuse position placement", &kFusePlaceRule},
    {T::fuse_place, "seven-inches", "If not right there", "Within 178 mm (7 in), along the wire", "",
     "7 inch 180 mm distance battery", &kFusePlaceRule},
    {T::fuse_place, "forty-inches", "In a sheath or enclosure all the way", "Within 1.0 m (40 in)", "",
     "40 inch conduit loom distance", &kFusePlaceRule},
    {T::fuse_place, "battery-post", "Sheathed, straight from a battery post", "Within 1.8 m (72 in)", "Boats only.",
     "72 inch battery terminal", &kFusePlaceBattery},
    {T::fuse_place, "road-vehicle", "Living vehicles in the US", "Within 457 mm (18 in) of the supply, in reach", "",
     "18 inch trailer van distance", &kFusePlaceVehicle},
    {T::fuse_place, "rating", "Its rating", "1.25 x the lasting current or more, never above what wire and parts carry",
     "The US boat rule would allow 150 % of the wire's figure below 50 V: not used here.",
     "fuse size 125 percent how big", &kFuseSizeRule},
    {T::fuse_place, "voltage", "Its voltage", "At least the highest the system sees, charging included", "",
     "32 V 58 V marked", &kFusePlaceRule},
    {T::fuse_place, "negative", "Negative wire", "No fuse there, unless it opens both poles", "",
     "black ground return", &kFuseNegative},
}};

constexpr std::array<Fact, 5> kDropPractice{{
    {T::drop_practice, "three", "3 %", "Panel feeders, navigation lights, bilge pumps and blowers, electronics",
     "0.36 V of 12 V", "critical voltage drop limit", &kDropThree},
    {T::drop_practice, "five", "5 %", "Feeder and branch together: advice for buildings, and where this app starts",
     "0.60 V of 12 V", "default voltage drop limit", &kDropFive},
    {T::drop_practice, "ten", "10 %", "Cabin lights and what can bear it", "1.2 V of 12 V",
     "non critical lights voltage drop limit", &kDropTen},
    {T::drop_practice, "parts", "0.1 / 0.2 / 0.3 V", "Ground side / a wire or connector / a switch, under load",
     "When a drop is measured piece by piece.", "service limits measure", &kDropService},
    {T::drop_practice, "of-nominal", "Per cent of what", "Of the nominal voltage: 12, 24 or 48 V, not of the reading",
     "", "percentage nominal", &kDropNominal},
}};

// What a colour never is; what it is by practice stands in conductor_colours.cpp.
constexpr std::array<Fact, 1> kColourPractice{{
    {T::colour_practice, "never", "Never a live wire", "green with yellow, or bare", "bonding only",
     "earth ground protective green", &kColourBonding},
}};

constexpr Fact code(std::string_view letters, std::string_view colour) {
  return {T::colour_code, letters, letters, colour, "", "colour code abbreviation wire", &kColourCode};
}
constexpr std::array kColourCodes{
    code("BK", "black"), code("BN", "brown"),  code("RD", "red"),   code("OG", "orange"), code("YE", "yellow"),
    code("GN", "green"), code("BU", "blue"),   code("VT", "violet"), code("GY", "grey"),  code("WH", "white"),
    code("PK", "pink"),  code("GD", "gold"),   code("TQ", "turquoise"), code("SR", "silver"),
    code("GNYE", "green with yellow"),
};

constexpr std::array<Fact, 11> kMeter{{
    {T::meter, "volts", "Volts", "Dial on d.c. volts; black lead on the negative, red where you ask",
     "The meter takes next to nothing, so it also sees volts through a bad joint.", "measure voltage dc how to",
     &kMeterUse},
    {T::meter, "sign", "The sign", "A minus means the red lead stands on the lower side: leads or wires are swapped",
     "", "minus negative reading reversed polarity", &kMeterUse},
    {T::meter, "continuity", "Continuity", "Power off and fuse out; touch the leads together first and hear the beep",
     "A beep is no proof of a good joint: see below.", "beep beeper ohms test", &kMeterUse},
    {T::meter, "drop", "Drop with the load on", "Load on; one lead at each end of the same wire or joint; read the lost volts",
     "The only test that shows a joint that fails when it works.", "voltage drop test loaded", &kMeterUse},
    {T::meter, "input", "What it takes", "About 10 MΩ on d.c. volts; 3 to 400 kΩ in a low-impedance mode", "",
     "input resistance impedance low z", &kMeterMemory},
    {T::meter, "accuracy", "How true it is", "0.5 % and 2 to 3 last digits; a cheap one 1 % and 3", "",
     "accuracy error tolerance", &kMeterMemory},
    {T::meter, "beeper", "Beeper threshold", "Sounds below 20 to 50 Ω: a joint of 1 Ω still beeps", "",
     "continuity threshold", &kMeterMemory},
    {T::meter, "leads", "Leads on ohms", "0.1 to 0.5 Ω of their own: no joint can be judged on ohms", "",
     "lead resistance null ohms", &kMeterMemory},
    {T::meter, "amperes", "Amperes range", "Usually up to 10 A through a fuse inside; never across a battery",
     "", "current measure ammeter shunt", &kMeterMemory},
    {T::meter, "lamp", "Test lamp", "3 to 5 W draws 0.25 to 0.4 A: it fails to light through a bad joint", "",
     "bulb probe test light", &kMeterLamp},
    {T::meter, "ghost", "Ghost volts", "Through 100 kΩ of dirt a meter still reads all but 0.12 V of 12 V: load it", "",
     "phantom voltage no load", &kMeterGhost},
}};

constexpr std::array<Fact, 5> kOutletForms{{
    {T::outlet_form, "lighter", "Lighter-form socket", "Centre contact positive, shell negative; bore about 21 mm",
     "Hold lasting loads to 10 A.", "cigarette cigar accessory power socket 12v polarity plug", &kLighterForm},
    {T::outlet_form, "iso4165", "Small power socket, 12 mm", "Centre positive; 12 mm bore, 5 mm pin",
     "12 A; 12 to 24 V.", "iso 4165 motorcycle socket polarity plug", &kIso4165Socket},
    {T::outlet_form, "usb", "USB charger outlet", "Positive and negative marked on its tabs",
     "Draws constant power: more amps as the volts fall.", "phone charger usb-c socket", &kOutletPart},
    {T::outlet_form, "wired", "Device wired in", "Red to +, black to -; check the marking before power",
     "Lights and fans may run backwards or die when swapped.", "light fan pump direct", &kPolarityPractice},
    {T::outlet_form, "check", "Polarity check", "Meter on d.c. volts: red on the centre or +, black on the shell or -: no minus",
     "", "reversed swapped test outlet", &kMeterUse},
}};

constexpr std::array<Fact, 9> kCautions{{
    {T::caution, "dead", "Hands in", "Fuse out, kept in your pocket, and proved dead first", "", "safety isolate",
     &kSafePractice},
    {T::caution, "bigger-fuse", "Fuse blows again", "Never fit a larger one: find what takes the current", "",
     "blown fuse bigger", &kSafePractice},
    {T::caution, "loose", "Loose joint", "It heats: 50 mΩ at 10 A is 5 W in one spot", "", "hot melted connector heat",
     &kHeatFormula},
    {T::caution, "battery", "Battery", "Can deliver thousands of amperes: rings and watches off, tools insulated", "",
     "short circuit burn jewellery", &kBatteryFault},
    {T::caution, "main-fuse", "Main protection", "Must break the battery's short-circuit current: a blade fuse breaks 1000 A", "",
     "breaking capacity lithium class", &kBladeFuse},
    {T::caution, "order", "Disconnecting", "Negative first off, last on", "", "battery terminal order remove",
     &kSafePractice},
    {T::caution, "gas", "Charging lead batteries", "Gives off gas that explodes: air, no sparks", "",
     "hydrogen ventilation", &kSafePractice},
    {T::caution, "buried", "Wire in insulation", "Carries less than any figure here: none of the tables is for it", "",
     "insulation foam wall ampacity", &kSafePractice},
    {T::caution, "scope", "Not for", "Mains, airbags, engine management; not above 60 V d.c.", "",
     "mains 230 120 ac airbag", &kSafePractice},
}};

using units::Ohms;
constexpr JointBand band(std::string_view key, std::string_view joint, double low, double high, std::string_view note) {
  return {key, joint, Ohms(low / 1000.0), Ohms(high / 1000.0), note, &kJointResistance};
}
constexpr std::array kJoints{
    band("crimp-small", "Crimp, 0.5 to 2.5 mm²", 0.1, 0.5, ""),
    band("crimp-large", "Crimp, 4 to 6 mm²", 0.05, 0.2, ""),
    band("ring", "Ring on a stud", 0.05, 0.3, "Nut tight, nothing between ring and bar."),
    band("lever", "Lever splice or spring clamp", 0.3, 1.5, ""),
    band("tab", "Push-on tab, 6.3 mm", 0.3, 2.0, "Usually rejected above 5 mΩ when aged."),
    band("fuse-clips", "Blade fuse in its clips, both", 0.5, 3.0, "Contacts only, without the fuse's element."),
    band("bad", "Corroded tab, loose ring", 20.0, 500.0, "Not good: unstable, and hot. 50 mΩ at 10 A is 5 W."),
};

using units::Volts;
constexpr RestVoltage rest(double charge, double volts, double spread) {
  return {charge, Volts(volts), Volts(spread)};
}
constexpr std::array kFloodedRest{rest(1.0, 12.65, 0.05), rest(0.75, 12.45, 0.05), rest(0.5, 12.24, 0.06),
                                  rest(0.25, 12.06, 0.09), rest(0.0, 11.89, 0.1)};
constexpr std::array kAgmRest{rest(1.0, 12.85, 0.1), rest(0.75, 12.6, 0.1), rest(0.5, 12.3, 0.1),
                              rest(0.25, 12.0, 0.1), rest(0.0, 11.7, 0.1)};
constexpr std::array kLithiumRest{rest(1.0, 13.5, 0.15),  rest(0.9, 13.35, 0.05), rest(0.8, 13.3, 0.05),
                                  rest(0.7, 13.22, 0.06), rest(0.6, 13.17, 0.06), rest(0.5, 13.15, 0.06),
                                  rest(0.4, 13.12, 0.06), rest(0.3, 13.0, 0.08),  rest(0.2, 12.9, 0.1),
                                  rest(0.1, 12.6, 0.25),  rest(0.0, 10.0, 0.8)};
constexpr std::array<RestCurve, 3> kRestCurves{{{"lead-flooded", kFloodedRest, &kRestFlooded},
                                                {"lead-agm", kAgmRest, &kRestAgm},
                                                {"lifepo4", kLithiumRest, &kRestLithium}}};

constexpr std::array<RateEffect, 3> kRateEffects{{{"lead-flooded", 1.25, true, &kPeukertExponent},
                                                  {"lead-agm", 1.15, true, &kPeukertExponent},
                                                  {"lifepo4", 1.0, false, &kLithiumRate}}};

}  // namespace

std::span<const Fact> facts(Topic topic) {
  switch (topic) {
    case Topic::fuse_place: return kFusePlace;
    case Topic::drop_practice: return kDropPractice;
    case Topic::colour_practice: return kColourPractice;
    case Topic::colour_code: return kColourCodes;
    case Topic::meter: return kMeter;
    case Topic::outlet_form: return kOutletForms;
    case Topic::caution: return kCautions;
  }
  return {};
}

std::span<const JointBand> joint_bands() { return kJoints; }
std::span<const RestCurve> rest_curves() { return kRestCurves; }

const RestCurve* rest_curve(std::string_view battery_key) {
  for (const RestCurve& curve : kRestCurves) {
    if (curve.battery == battery_key) return &curve;
  }
  return nullptr;
}

double charge_at_rest(const RestCurve& curve, units::Volts volts) {
  if (!(volts < curve.points.front().volts)) return volts.number() == volts.number() ? curve.points.front().charge : 0.0;
  for (std::size_t i = 1; i < curve.points.size(); ++i) {
    const RestVoltage& above = curve.points[i - 1];
    const RestVoltage& below = curve.points[i];
    if (volts < below.volts) continue;
    const double share = (volts - below.volts) / (above.volts - below.volts);
    return below.charge + share * (above.charge - below.charge);
  }
  return curve.points.back().charge;
}

const RateEffect* rate_effect(std::string_view battery_key) {
  for (const RateEffect& effect : kRateEffects) {
    if (effect.battery == battery_key) return &effect;
  }
  return nullptr;
}

}  // namespace tables
