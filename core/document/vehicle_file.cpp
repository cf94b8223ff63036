#include "document/vehicle_file.h"

#include "document/circuit_list.h"
#include "document/vehicle_fields.h"
#include "document/writer.h"
#include "vehicle/validate.h"

namespace document {
namespace {

using circuit::Problem;
using circuit::Problems;

VehiclesRead no_vehicles(Problems problems) { return {{}, std::move(problems), 0, {}}; }

// What a vehicle works out from its sources and its other circuits has no place in it as a figure.
Problems told_beside_the_vehicle(const std::vector<circuit::Circuit>& circuits) {
  Problems problems;
  for (std::size_t i = 0; i < circuits.size() && problems.size() < kEnoughProblems; ++i) {
    const circuit::Supply& supply = circuits[i].supply;
    const std::string place = "Circuit " + std::to_string(i + 1) + ", supply";
    if (supply.highest) {
      problems.push_back({place, "A vehicle tells its highest voltage by its sources.", "Take out \"highest_v\"."});
    }
    if (supply.beside != units::Amperes(0.0)) {
      problems.push_back({place, "A vehicle tells what is drawn beside a circuit by its other circuits.",
                          "Take out \"beside_a\"."});
    }
  }
  return problems;
}

Problem too_large(const std::string& title) {
  return {title, "With all of its circuits and traces it is larger than " +
                     std::to_string(circuit::kMaxFileBytes >> 20) + " MiB.",
          "Delete kept traces, or make two vehicles of it."};
}

// Tight text spreads out when it is written, and what is kept has to be read again. Numbers,
// escapes and spaces together make it less than four times as long.
Problems too_large_to_keep(const std::vector<vehicle::Vehicle>& vehicles, std::size_t bytes_read) {
  Problems problems;
  if (bytes_read <= circuit::kMaxFileBytes / 4) return problems;
  for (std::size_t i = 0; i < vehicles.size() && problems.size() < kEnoughProblems; ++i) {
    if (write_vehicle(vehicles[i]).size() > circuit::kMaxFileBytes) {
      problems.push_back(too_large("Vehicle " + std::to_string(i + 1)));
    }
  }
  return problems;
}

VehiclesRead gathered(const FileResult& file) {
  ReadResult read = read_circuit_list(file);
  if (!read.problems.empty()) return no_vehicles(std::move(read.problems));
  if (Problems problems = told_beside_the_vehicle(read.circuits); !problems.empty()) return no_vehicles(std::move(problems));
  vehicle::Gathered gathered = vehicle::gather(read.circuits);
  Problems problems;
  for (std::size_t i = 0; i < gathered.vehicles.size() && problems.size() < kEnoughProblems; ++i) {
    for (Problem& problem : vehicle::validate(gathered.vehicles[i])) {
      problems.push_back(within(std::move(problem), "Vehicle " + std::to_string(i + 1)));
    }
  }
  if (!problems.empty()) return no_vehicles(std::move(problems));
  return {std::move(gathered.vehicles), {}, file.version, std::move(gathered.where)};
}

VehiclesRead read_vehicle_list(const FileResult& file) {
  const ListResult items = read_list(file.root, "vehicles", kMaxVehiclesInFile);
  if (items.problem) return no_vehicles({*items.problem});
  VehiclesRead result;
  result.from_version = file.version;
  const auto fields = [](Reader& door, vehicle::Vehicle& read) { vehicle_fields(door, read); };
  for (std::size_t i = 0; i < items.list->size() && result.problems.size() < kEnoughProblems; ++i) {
    result.vehicles.push_back(read_item<vehicle::Vehicle>((*items.list)[i], "Vehicle " + std::to_string(i + 1),
                                                          result.problems, fields, vehicle::validate));
  }
  return result;
}

}  // namespace

VehiclesRead read_vehicles(std::string_view text) {
  const FileResult file = read_file(text);
  if (file.problem) return no_vehicles({*file.problem});
  VehiclesRead result = file.format == kVehiclesFormat ? read_vehicle_list(file) : gathered(file);
  if (result.problems.empty()) result.problems = too_large_to_keep(result.vehicles, text.size());
  if (!result.problems.empty()) return no_vehicles(std::move(result.problems));
  return result;
}

std::optional<Problem> too_long_to_read(const std::string& written) {
  if (written.size() <= circuit::kMaxFileBytes) return std::nullopt;
  return too_large("");
}

std::string write_vehicles(const std::vector<vehicle::Vehicle>& vehicles) {
  Json root = Json::object();
  Writer writer(root);
  writer.text("format", std::string(kVehiclesFormat));
  writer.whole("version", kFormatVersion);
  writer.list("vehicles", "vehicle", vehicles,
              [](Writer& inside, const vehicle::Vehicle& each) { vehicle_fields(inside, each); });
  return text_of(root);
}

std::string write_vehicle(const vehicle::Vehicle& vehicle) { return write_vehicles({vehicle}); }

}  // namespace document
