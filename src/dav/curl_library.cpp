#include "dav/curl_library.h"

#include <dlfcn.h>

namespace larderloop::dav {
namespace {

constexpr const char* kFile = "libcurl.so.4";

template <class Function>
bool find(void* library, const char* name, Function& into) {
  into =
      reinterpret_cast<Function>(::dlsym(library, name));  // NOLINT: how POSIX hands out functions
  return into != nullptr;
}

Result<const CurlLibrary*> load() {
  void* library = ::dlopen(kFile, RTLD_NOW | RTLD_LOCAL);
  static CurlLibrary found;
  const bool all = library != nullptr && find(library, "curl_global_init", found.global_init) &&
                   find(library, "curl_easy_init", found.easy_init) &&
                   find(library, "curl_easy_cleanup", found.easy_cleanup) &&
                   find(library, "curl_easy_reset", found.easy_reset) &&
                   find(library, "curl_easy_setopt", found.easy_setopt) &&
                   find(library, "curl_easy_perform", found.easy_perform) &&
                   find(library, "curl_easy_getinfo", found.easy_getinfo) &&
                   find(library, "curl_easy_strerror", found.easy_strerror) &&
                   find(library, "curl_slist_append", found.slist_append) &&
                   find(library, "curl_slist_free_all", found.slist_free_all);
  if (!all || found.global_init(CURL_GLOBAL_DEFAULT) != CURLE_OK) {
    return fail(ErrorKind::kConfig,
                std::string("the library for talking to servers, ") + kFile + ", cannot be used",
                "install it: apt-get install libcurl4");
  }
  return &found;
}

}  // namespace

Result<const CurlLibrary*> curl_library() {
  static const Result<const CurlLibrary*> library = load();
  return library;
}

}  // namespace larderloop::dav
