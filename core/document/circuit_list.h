// The circuits of a file whose head is read. Private to this room.
#pragma once

#include "document/circuit_file.h"
#include "document/reader.h"

namespace document {

ReadResult read_circuit_list(const FileResult& file);

}  // namespace document
