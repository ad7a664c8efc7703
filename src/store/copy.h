// copy.h - whole copies of a book. Errors: SqliteFailure, StoreFailure.
#pragma once

#include "store/sqlite_handle.h"

#include <functional>
#include <string>

namespace larderloop::store {

// Page by page, of one moment, into a new file that must not exist; synced. `verify` reads the
// finished copy before it gets its name, and throws when it is not what it should be. On failure no
// file is left.
void copy_to_new_file(const Connection& from, const std::string& path,
                      const std::function<void(const Connection&)>& verify);
// Into an empty connection.
void copy_pages(const Connection& from, const Connection& to);

}  // namespace larderloop::store
