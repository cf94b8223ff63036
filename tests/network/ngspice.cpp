#include "network/ngspice.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace network_test {
namespace {

namespace fs = std::filesystem;

std::vector<Printed> read_log(const fs::path& path, std::size_t decks) {
  std::vector<Printed> printed(decks);
  std::ifstream in(path);
  std::size_t deck = decks;
  for (std::string line; std::getline(in, line);) {
    std::istringstream words(line);
    std::string first, second;
    double value = 0.0;
    words >> first >> second;
    if (first == "CIRCUIT") deck = static_cast<std::size_t>(std::stoul(second));
    if (second == "=" && deck < decks && words >> value) printed[deck][first] = value;
  }
  return printed;
}

}  // namespace

std::string with_number(std::string_view before, std::size_t number) {
  std::string text(before);
  return text.append(std::to_string(number));
}

std::vector<Printed> run_ngspice(const std::vector<std::string>& decks) {
  static std::size_t runs = 0;
  const fs::path folder =
      fs::temp_directory_path() /
      with_number(with_number("branchlight-ngspice-", static_cast<std::size_t>(getpid())) + "-", runs++);
  fs::remove_all(folder);
  fs::create_directories(folder);
  std::ofstream control(folder / "control.sp");
  control << "* all circuits in one process\n.control\nset numdgt=15\nset noaskquit\n";
  for (std::size_t k = 0; k < decks.size(); ++k) {
    const fs::path deck = folder / with_number("circuit", k);
    std::ofstream(deck) << decks[k] << ".options reltol=1e-9 abstol=1e-13 vntol=1e-11 gmin=1e-18 itl1=2000\n.end\n";
    control << "echo CIRCUIT " << k << "\nsource " << deck.string() << "\nop\nprint all\nremcirc\ndestroy all\n";
  }
  control << "quit\n.endc\n.end\n";
  control.close();
  // Its complaints go elsewhere: in one file they cut lines of the answer in two.
  const std::string command = "ngspice -b '" + (folder / "control.sp").string() + "' > '" + (folder / "log").string() +
                              "' 2> '" + (folder / "errors").string() + "'";
  REQUIRE(std::system("command -v ngspice > /dev/null") == 0);  // install the package ngspice
  (void)std::system(command.c_str());                           // its exit status tells nothing in batch mode
  std::vector<Printed> printed = read_log(folder / "log", decks.size());
  fs::remove_all(folder);
  return printed;
}

}  // namespace network_test
