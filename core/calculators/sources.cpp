#include "calculators/ask.h"

namespace calculators {

using tables::Citation;
using tables::Standing;

constinit const Citation kOhmsLaw{"ohms-law", "Ohm's law", "", "V = I R; red and black wire in series",
                                  "Only the wire counts: joints, fuse and feeder add to it.", Standing::computed};
constinit const Citation kPowerLaw{"power-law", "Joule's law", "", "P = V I",
                                   "Direct current. A motor takes several times its current to start.",
                                   Standing::computed};
constinit const Citation kKirchhoff{"kirchhoff", "Kirchhoff's and Ohm's laws", "",
                                    "series: resistances add; together: conductances add",
                                    "Plain resistances. Lamps, chargers and motors change theirs with the voltage.",
                                    Standing::computed};
constinit const Citation kLoadedTest{"loaded-test", "Drop under load: Ohm's law on two readings", "",
                                     "R = (V1 - V2) / I",
                                     "Take both readings with the same load on, or one with it off; a digital "
                                     "meter's last digit is part of the answer.", Standing::computed};
constinit const Citation kChargeOverCurrent{"charge-over-current", "Charge over current", "",
                                            "t = C x depth / I", "A new battery, warm. Age and cold take from it.",
                                            Standing::computed};

std::vector<const Citation*> formula_citations() {
  return {&kOhmsLaw, &kPowerLaw, &kKirchhoff, &kLoadedTest, &kChargeOverCurrent};
}

}  // namespace calculators
