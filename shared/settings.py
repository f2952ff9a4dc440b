"""Every knob of the program, each read from the environment, each with a default that just runs.

The default needs no service: SQLite and photographs in one data folder, one worker process. A
wrong value stops the start with a sentence. The secret key is made on the first start and kept
in the data folder, so that no default secret exists.
"""

import os
import secrets
from contextlib import suppress
from pathlib import Path

from django.core.exceptions import ImproperlyConfigured
from django.utils.csp import CSP

BASE_DIR = Path(__file__).resolve().parent.parent


def _switch(name: str, default: bool) -> bool:
    text = os.environ.get(name, "yes" if default else "no").lower()
    if text not in {"yes", "no"}:
        raise ImproperlyConfigured(f"{name} must be yes or no, not {text!r}.")
    return text == "yes"


def _secret_key(folder: Path) -> str:
    """Read the key from the environment or the data folder; make it there if there is none."""
    if given := os.environ.get("BEARING_CLOTH_SECRET_KEY"):
        if len(given) < 40:
            raise ImproperlyConfigured("BEARING_CLOTH_SECRET_KEY must have at least 40 characters.")
        return given
    kept = folder / "secret-key.txt"
    fresh = secrets.token_urlsafe(50)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if not kept.exists():
            draft = folder / f"secret-key.{secrets.token_hex(4)}"
            draft.touch(mode=0o600)
            draft.write_text(fresh)
            with suppress(FileExistsError):  # another process was first: its key stands
                os.link(draft, kept)
            draft.unlink()
        return kept.read_text()
    except OSError:  # a read-only disk: commands that keep nothing still run
        return fresh


DATA_DIR = Path(os.environ.get("BEARING_CLOTH_DATA", BASE_DIR / ".data" / "workshop")).expanduser()
SECRET_KEY = _secret_key(DATA_DIR)
DEBUG = _switch("BEARING_CLOTH_DEBUG", default=False)
ALLOWED_HOSTS = os.environ.get("BEARING_CLOTH_HOSTS", "localhost,127.0.0.1,[::1]").split(",")
CSRF_TRUSTED_ORIGINS = [o for o in os.environ.get("BEARING_CLOTH_ORIGINS", "").split(",") if o]

INSTALLED_APPS = [
    "shared",
    "inventory",
    "planning",
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django.forms",
    "django_filters",
    "django_htmx",
    "django_tasks_db",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.middleware.csp.ContentSecurityPolicyMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.auth.middleware.LoginRequiredMiddleware",
    "shared.middleware.WorkshopMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
]

ROOT_URLCONF = "shared.urls"
WSGI_APPLICATION = "shared.wsgi.application"
FORM_RENDERER = "shared.forms.PageRenderer"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.template.context_processors.csp",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
            ],
            "builtins": ["shared.templatetags.cloth"],
        },
    },
]

DATABASES = {
    "default": {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": DATA_DIR / "workshop.sqlite3",
        "OPTIONS": {
            # a writer takes its lock at once and waits, rather than failing half-way
            "transaction_mode": "IMMEDIATE",
            "timeout": 20,
            # synchronous=FULL: an acknowledged save survives a power cut
            "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;",
        },
        "TEST": {"NAME": None},
    }
}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

TASKS = {"default": {"BACKEND": "django_tasks_db.DatabaseBackend"}}

AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator"},
    {"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator"},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]
LOGIN_URL = "log-in"
LOGIN_REDIRECT_URL = "home"
LOGOUT_REDIRECT_URL = "log-in"

LANGUAGE_CODE = "en-gb"
TIME_ZONE = os.environ.get("BEARING_CLOTH_TIME_ZONE", "UTC")
USE_TZ = True

STATIC_URL = "static/"
WHITENOISE_USE_FINDERS = True
MEDIA_ROOT = DATA_DIR / "photos"

# a photograph at full phone size; anything larger is refused by the form with a sentence
DATA_UPLOAD_MAX_MEMORY_SIZE = 5 * 1024 * 1024
FILE_UPLOAD_PERMISSIONS = 0o600

SECURE_CSP = {
    "default-src": [CSP.SELF],
    "script-src": [CSP.SELF],
    "style-src": [CSP.SELF],
    "img-src": [CSP.SELF],
    "object-src": [CSP.NONE],
    "base-uri": [CSP.SELF],
    "form-action": [CSP.SELF],
    "frame-ancestors": [CSP.NONE],
}
SECURE_REFERRER_POLICY = "same-origin"
SECURE_CONTENT_TYPE_NOSNIFF = True
# behind HTTPS: one switch turns on everything that only makes sense there
HTTPS = _switch("BEARING_CLOTH_HTTPS", default=False)
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = SECURE_SSL_REDIRECT = HTTPS
if HTTPS:  # the proxy in front must set this header itself, whatever a visitor sends
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
SECURE_HSTS_SECONDS = 31_536_000 if HTTPS else 0
# whether other names of the domain, and browsers' own lists, follow is for its owner to say
SILENCED_SYSTEM_CHECKS = ["security.W005", "security.W021"]
SESSION_COOKIE_AGE = 60 * 60 * 24 * 60

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"console": {"class": "logging.StreamHandler"}},
    "root": {"handlers": ["console"], "level": "WARNING"},
    # how many requests wait their turn is no news to a maker
    "loggers": {"waitress.queue": {"level": "ERROR"}},
}
