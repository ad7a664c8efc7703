// curl_library.h - libcurl, loaded when it is first needed: linked into the program it and its
// thirty libraries would cost every command, most of which ask no server, more time than all the
// rest of their start (docs/dependencies.md).
#pragma once

#include "larderloop/core/result.h"

#include <curl/curl.h>

namespace larderloop::dav {

// The functions of libcurl 4 that are used, under their own names.
struct CurlLibrary {
  decltype(&::curl_global_init) global_init = nullptr;
  decltype(&::curl_easy_init) easy_init = nullptr;
  decltype(&::curl_easy_cleanup) easy_cleanup = nullptr;
  decltype(&::curl_easy_reset) easy_reset = nullptr;
  decltype(&::curl_easy_setopt) easy_setopt = nullptr;
  decltype(&::curl_easy_perform) easy_perform = nullptr;
  decltype(&::curl_easy_getinfo) easy_getinfo = nullptr;
  decltype(&::curl_easy_strerror) easy_strerror = nullptr;
  decltype(&::curl_slist_append) slist_append = nullptr;
  decltype(&::curl_slist_free_all) slist_free_all = nullptr;
};

// Loaded once a run, and stays. kConfig when it is not there.
[[nodiscard]] Result<const CurlLibrary*> curl_library();

}  // namespace larderloop::dav
