// Reads one JSON request a line, writes one JSON answer a line. docs/probe.md tells the requests.
#include <iostream>
#include <string>

#include "probe/answer_line.h"

int main() {
  std::ios::sync_with_stdio(false);
  for (std::string line; std::getline(std::cin, line);) {
    std::cout << probe::answer_line(line) << '\n' << std::flush;
  }
  return 0;
}
